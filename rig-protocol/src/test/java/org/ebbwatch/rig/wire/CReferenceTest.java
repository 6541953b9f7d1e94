package org.ebbwatch.rig.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.rig.message.Refused.NO_CHANNEL;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.lifecycle.AddLifecycleHook;
import net.jqwik.api.lifecycle.AfterTry;
import net.jqwik.api.lifecycle.BeforeTry;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.OpenAllLoads;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.rig.wire.ProtocolDocument.WorkedFrame;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The board in C, {@code src/main/c}, behaves as docs/rig-protocol.md, part 3, says, and makes the frames of part 5. */
class CReferenceTest {
    private static final int FUZZED_BYTES = 5_000_000;

    private ScriptedBoard board;

    @BeforeEach
    @BeforeTry
    void power() throws Exception {
        board = new ScriptedBoard(CCompiler.testProgram("board_script"));
        board.then("start");
    }

    @AfterEach
    @AfterTry
    void off() {
        if (board != null) {
            board.close();
        }
    }

    @Test
    void compiles_strictly_for_a_chip_too_and_one_board_of_16_channels_takes_less_than_2_KiB() throws Exception {
        CCompiler.compileOnly("example_loop.c");

        assertThat(board.bytesOfMemory()).isBetween(400, 2_047);
    }

    @Test
    void makes_the_worked_frames_of_a_board() {
        assertThat(board.then("start")).isEqualTo(withDelimiter("IDENTITY of a small board"));

        board.then("clock 86399250");
        board.then("start");
        board.then("scan 86399");
        board.then("volts 0 -1600 1 1");
        board.then("celsius 0 -512 1 0");
        board.then("amperes 0 -3 1 0");
        board.then("volts 1 29760 1 0");
        board.then("celsius 1 3125 1 0");
        board.then("amperes 1 3720 1 0");
        board.then("celsius 2 2190 1 0");
        board.hears(wire("SET_LOAD"));
        board.then("sequence 1");
        assertThat(board.then("pass 1000")).isEqualTo(wire("READINGS with amperes"));

        board.hears(FrameEncoder.encode(new OpenAllLoads(), 0));
        board.then("volts 1 161 1 0");
        board.then("pulled 1 162");
        board.hears(wire("CHECK_LEAD"));
        board.then("sequence 300");
        assertThat(board.then("pass 200")).isEqualTo(wire("LEAD_CHECKED"));
        board.then("pass 200");
        board.then("sequence 301");
        assertThat(board.hears(wire("SET_LOAD"))).isEqualTo(wire("DONE"));
        assertThat(board.hears(FrameEncoder.encode(new SetLoad(0, true), 13))).isEqualTo(wire("REFUSED"));
    }

    @Property(tries = 300)
    @AddLifecycleHook(CCompiler.Needed.class)
    void answers_every_request_but_a_sign_of_life_by_exactly_one_frame_that_names_it(
            @ForAll("requests") HostMessage request) {
        List<Message> answers = board.answers(request, 4_711);
        if (request instanceof CheckLead && answers.isEmpty()) {
            answers = board.passes(400);
        }

        if (request instanceof HostAlive) {
            assertThat(answers).isEmpty();
        } else if (request instanceof Who) {
            assertThat(answers).hasSize(1).first().isInstanceOf(Identity.class);
        } else {
            assertThat(answers).hasSize(1);
            assertThat(named(answers.get(0))).isEqualTo(4_711);
        }
    }

    @Provide
    Arbitrary<HostMessage> requests() {
        return AnyMessage.messages().filter(HostMessage.class::isInstance).map(HostMessage.class::cast);
    }

    private static int named(Message answer) {
        if (answer instanceof Done done) {
            return done.requestSequence();
        }
        return answer instanceof Refused refused ? refused.requestSequence() : ((LeadChecked) answer).requestSequence();
    }

    @Test
    void opens_its_loads_when_the_host_is_lost_and_closes_none_by_itself() {
        board.answers(new HostAlive(17, 0), 1);
        assertThat(board.answers(new SetLoad(1, true), 2)).containsExactly(new Done(2, Kind.SET_LOAD.code()));
        assertThat(board.loads()).isEqualTo("0 1 0");
        board.passes(9_999);
        assertThat(board.loads()).isEqualTo("0 1 0");

        List<Message> after = board.passes(1_001);
        assertThat(board.loads()).isEqualTo("0 0 0");
        assertThat(((Readings) after.get(after.size() - 1)).readings().get(1).state() & Reading.LOAD_APPLIED)
                .isZero();
        assertThat(board.answers(new SetLoad(1, true), 3)).containsExactly(refused(3, 1, RefusalReason.HOST_LOST));

        board.answers(new HostAlive(17, 0), 4);
        board.passes(2_000);
        assertThat(board.loads()).isEqualTo("0 0 0");
        board.answers(new SetLoad(1, true), 5);
        assertThat(board.loads()).isEqualTo("0 1 0");
    }

    @Test
    void counts_the_host_s_time_over_the_wrap_of_its_clock() {
        board.then("clock 4294960000");
        board.then("start");
        board.answers(new HostAlive(17, 0), 1);
        board.answers(new SetLoad(1, true), 2);

        board.passes(9_000);
        assertThat(board.loads()).isEqualTo("0 1 0");
        board.passes(1_000);
        assertThat(board.loads()).isEqualTo("0 0 0");
    }

    @Test
    void scans_once_an_interval_and_one_new_interval_after_the_last_scan_when_it_is_changed() {
        assertThat(board.passes(3_500)).hasSize(3);
        board.answers(new SetInterval(2_000), 1);
        assertThat(board.passes(1_499)).isEmpty();
        assertThat(board.passes(1)).hasSize(1);
        assertThat(board.answers(new SetInterval(9), 2))
                .containsExactly(new Refused(2, Kind.SET_INTERVAL.code(), NO_CHANNEL, RefusalReason.OUT_OF_RANGE));
    }

    @Test
    void tells_an_attached_lead_from_an_open_one_and_sends_no_volts_meanwhile() {
        for (var expected : Map.of(100, LeadOutcome.ATTACHED, 13_300, LeadOutcome.OPEN, 5_000, LeadOutcome.NOT_DONE)
                .entrySet()) {
            board.then("volts 1 40 1 0");
            board.then("pulled 1 " + expected.getKey());
            board.passes(900);
            assertThat(board.answers(new CheckLead(1), 7)).isEmpty();
            List<Message> sent = board.passes(400);

            assertThat(sent).contains(new LeadChecked(7, 1, expected.getValue(), 40, expected.getKey()));
            assertThat(sent.stream()
                            .filter(Readings.class::isInstance)
                            .map(scan -> ((Readings) scan).readings().get(1).state() & Reading.VOLTS_VALID))
                    .containsOnly(0);
            board.passes(700);
        }
    }

    @Test
    void ends_a_lead_check_when_a_load_is_to_open_and_lets_none_close_meanwhile() {
        board.answers(new CheckLead(1), 1);
        assertThat(board.answers(new CheckLead(1), 2))
                .containsExactly(new Refused(2, Kind.CHECK_LEAD.code(), 1, RefusalReason.BUSY));
        assertThat(board.answers(new SetLoad(1, true), 3)).containsExactly(refused(3, 1, RefusalReason.BUSY));

        assertThat(board.answers(new SetLoad(1, false), 4))
                .contains(new Done(4, Kind.SET_LOAD.code()))
                .hasAtLeastOneElementOfType(LeadChecked.class);
        assertThat(board.passes(900).stream().filter(LeadChecked.class::isInstance))
                .isEmpty();
    }

    @Test
    void refuses_what_its_hardware_will_not_do() {
        board.then("hindered 1 6");
        assertThat(board.answers(new SetLoad(1, true), 1))
                .containsExactly(refused(1, 1, RefusalReason.OVER_TEMPERATURE));
        board.then("hindered 1 0");
        board.then("stuck 1");
        assertThat(board.answers(new SetLoad(1, true), 2)).containsExactly(refused(2, 1, RefusalReason.FAILED));
        assertThat(board.answers(new OpenAllLoads(), 3))
                .containsExactly(new Refused(3, Kind.OPEN_ALL_LOADS.code(), 1, RefusalReason.FAILED));
        assertThat(board.answers(new SetLoad(3, true), 4))
                .containsExactly(refused(4, 3, RefusalReason.NO_SUCH_CHANNEL));
    }

    private static Refused refused(int sequence, int channel, RefusalReason reason) {
        return new Refused(sequence, Kind.SET_LOAD.code(), channel, reason);
    }

    @Test
    void drops_a_frame_with_one_bit_wrong_and_understands_the_next() {
        byte[] whole = FrameEncoder.encode(new SetLoad(1, true), 1);
        for (int bit = 0; bit < 8 * (whole.length - 1); bit++) {
            byte[] damaged = whole.clone();
            damaged[bit / 8] ^= (byte) (1 << bit % 8);
            assertThat(ScriptedBoard.messages(board.hears(damaged)))
                    .as("bit %d", bit)
                    .isEmpty();
            assertThat(board.loads()).isEqualTo("0 0 0");
        }
        assertThat(ScriptedBoard.messages(board.hears(whole))).hasSize(1);
    }

    @Test
    void drops_the_part_of_a_frame_whose_sender_died() {
        byte[] whole = FrameEncoder.encode(new SetLoad(1, true), 1);
        board.hears(Arrays.copyOf(whole, whole.length / 2));
        board.passes(1_000);

        assertThat(ScriptedBoard.messages(board.hears(whole))).contains(new Done(1, Kind.SET_LOAD.code()));
    }

    /** A thousand million bytes by the same program: docs/boards/c.md. */
    @Test
    void stands_noise_and_damaged_frames_under_the_sanitizers() throws Exception {
        Path fuzz = CCompiler.testProgram("fuzz", "-fsanitize=address,undefined", "-fno-sanitize-recover=all");
        Process process = new ProcessBuilder(fuzz.toString(), Integer.toString(FUZZED_BYTES), "1")
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);

        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        assertThat(process.exitValue()).as(said).isZero();
        assertThat(said).contains("asked to close");
    }

    private static byte[] wire(String title) {
        return ProtocolDocument.frames().stream()
                .collect(Collectors.toMap(WorkedFrame::title, WorkedFrame::wire))
                .get(title);
    }

    private static byte[] withDelimiter(String title) {
        return HexFormat.of().parseHex("00" + HexFormat.of().formatHex(wire(title)));
    }
}
