package org.ebbwatch.killed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.assertj.core.groups.Tuple;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Happening;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.link.SimRunner;
import org.ebbwatch.sim.link.TcpPort;
import org.ebbwatch.sim.rack.SimBoard;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.ebbwatch.store.AlarmRow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Two cells on their way from check-in to release, through {@code kill -9} in every phase. */
@Timeout(value = 10, unit = TimeUnit.MINUTES)
class KilledAtWorkTest {
    private static final int SPEED = 20_000;
    private static final long INTERVAL_MILLIS = 2_000;
    private static final long HOUR_MILLIS = 3_600_000;
    private static final long SHORT_MILLIS = Duration.ofMinutes(5).toMillis();
    private static final long LONG_MILLIS = Duration.ofMinutes(20).toMillis();

    @TempDir
    Path records;

    private SimRunner board;
    private Process process;
    private BufferedReader told;
    private PrintStream orders;
    private final Set<Integer> bonded = new HashSet<>();
    private final Map<String, Told> latest = new HashMap<>();

    @BeforeEach
    void switchTheBoardOn() throws IOException {
        List<ChannelSpec> cells = WatchProcess.CELLS.stream()
                .map(card -> ChannelSpec.switched(
                        CellSpec.build(card.tag(), Chemistry.NMC, card.ratedAmpereHours())
                                .slowShare(new SlowShare(0.0012, 60))
                                .done(),
                        card.loadOhms()))
                .toList();
        Fault heats = Fault.on(1, FaultKind.WARMING, Trigger.after(Happening.BONDED, 2 * HOUR_MILLIS))
                .with(Map.of("watts", 0.45, "riseMinutes", 60.0));
        BoardSpec spec = BoardSpec.build("SIM-BENCH", cells)
                .faults(List.of(heats))
                .checksLeads(true)
                .done();
        board = new SimRunner(new SimBoard(spec, 3, SPEED, INTERVAL_MILLIS), TcpPort.listen(0), SPEED).start();
    }

    @AfterEach
    void switchEverythingOff() throws IOException {
        process.destroyForcibly();
        board.close();
    }

    @Test
    void passages_go_on_in_their_phase_and_every_gap_and_alarm_is_on_record() throws Exception {
        watch();
        await("sound", it -> it.phase() == Phase.DRAIN);
        afterHours("sound", 1);
        killFor(SHORT_MILLIS);

        watch();
        assertThat(first("sound").phase()).isEqualTo(Phase.DRAIN);
        afterHours("sound", 1);
        killFor(0);

        watchUntilDeathBefore(Phase.REST);
        watch();
        assertThat(first("sound").phase()).isEqualTo(Phase.REST);
        afterHours("sound", 2);
        killFor(SHORT_MILLIS);

        watch();
        assertThat(first("sound").phase()).isEqualTo(Phase.REST);
        afterHours("sound", 1);
        killFor(LONG_MILLIS);

        watch();
        assertThat(first("sound").phase()).isEqualTo(Phase.REST);
        await("sound", it -> it.phase() == Phase.TIE_OFF);
        await("warm", it -> it.phase() == Phase.TIE_OFF);
        killFor(SHORT_MILLIS);

        watch();
        assertThat(first("sound").phase()).isEqualTo(Phase.TIE_OFF);
        await("warm", it -> it.findings().contains(FindingKind.HOT));
        killFor(SHORT_MILLIS);

        watch();
        assertThat(first("warm").phase()).isEqualTo(Phase.HELD);
        assertThat(first("warm").findings()).contains(FindingKind.HOT);
        await("sound", it -> it.phase() == Phase.RELEASED);
        killFor(0);

        readTheRecords();
    }

    private void readTheRecords() {
        try (StoredRack storage = StoredRack.open(records)) {
            for (PassageCard card : storage.cards()) {
                assertThat(storage.refold(card).events()).containsExactlyElementsOf(storage.recorded(card));
            }
            PassageCard sound = card(storage, "sound");
            assertThat(storage.recorded(sound))
                    .filteredOn(line -> line.contains(" DRAIN REST "))
                    .as("the phase that was not written down before the kill, written down once after it")
                    .hasSize(1);
            List<Across> gaps = new GapReader(sound).read(storage);
            assertThat(gaps)
                    .filteredOn(across -> across.gap().leastMillis() >= SHORT_MILLIS)
                    .as("each time nobody watched is on record, as long as the board's own clock says")
                    .hasSizeGreaterThanOrEqualTo(5)
                    .allSatisfy(across -> assertThat(across.gap().mostMillis())
                            .isEqualTo(across.gap().leastMillis()));
            assertThat(gaps).allSatisfy(Across::check);
            assertThat(gaps).extracting(Across::phase).contains(Phase.DRAIN, Phase.REST, Phase.TIE_OFF);
            assertThat(storage.alarms().living())
                    .filteredOn(alarm -> AlarmState.valueOf(alarm.state()) != AlarmState.RETURNED_UNACKNOWLEDGED)
                    .as("one alarm for what stands, none lost and none invented")
                    .extracting(AlarmRow::kind, AlarmRow::subject)
                    .containsExactlyInAnyOrderElementsOf(standing(storage));
            assertThat(storage.alarms().living())
                    .extracting(AlarmRow::kind)
                    .as("and of what passed, the times when nobody watched")
                    .containsOnlyOnce("SILENT");
            assertThat(storage.alarms().living())
                    .flatExtracting(alarm -> storage.alarms().steps(alarm.id()))
                    .allSatisfy(step -> assertThat(step.causeLine()).isNotBlank());
        }
    }

    // ---- at the rack ----

    private void watch(String... deadly) throws IOException {
        String port = board.address().substring(board.address().lastIndexOf(':') + 1);
        latest.clear();
        process = WatchProcess.command(records, port, deadly)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        told = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        orders = new PrintStream(process.getOutputStream(), true, StandardCharsets.UTF_8);
    }

    private void watchUntilDeathBefore(Phase phase) throws IOException, InterruptedException {
        watch(phase.name());
        while (told.readLine() != null) {
            // It tells until it dies.
        }
        assertThat(process.waitFor()).as("killed by itself").isEqualTo(137);
        assertThat(latest).isEmpty();
    }

    /** Kills the watch; the board runs on unheard for so long. */
    private void killFor(long unheardMillis) throws InterruptedException {
        process.destroyForcibly().waitFor();
        board.call(it -> {
                    for (long millis = 0; millis < unheardMillis; millis += INTERVAL_MILLIS) {
                        it.step();
                        it.takeOutput();
                    }
                    return it;
                })
                .join();
    }

    private Told first(String tag) throws IOException {
        return await(tag, it -> true);
    }

    private Told afterHours(String tag, long hours) throws IOException {
        long from = await(tag, it -> it.eventMillis() > 0).eventMillis();
        return await(tag, it -> it.eventMillis() >= from + hours * HOUR_MILLIS);
    }

    /** Does what is asked for meanwhile. */
    private Told await(String tag, Predicate<Told> wanted) throws IOException {
        if (latest.containsKey(tag) && wanted.test(latest.get(tag))) {
            return latest.get(tag);
        }
        for (String line = told.readLine(); line != null; line = told.readLine()) {
            Told now = Told.read(line);
            latest.put(now.tag(), now);
            attend(now);
            if (now.tag().equals(tag) && wanted.test(now)) {
                return now;
            }
        }
        throw new AssertionError("the watch ended by itself; last told: " + latest);
    }

    private void attend(Told now) {
        int channel = now.tag().equals("sound") ? 0 : 1;
        if (now.wishes().contains(Wish.ASK_PUT_ON)) {
            order(now, Act.PUT_ON);
        } else if (now.wishes().contains(Wish.ASK_TIE_OFF)) {
            orders.println("tie " + now.tag());
        } else if (now.phase() == Phase.TIE_OFF && bonded.add(channel)) {
            board.call(it -> {
                        it.bond(channel);
                        it.contain(channel, true);
                        return it;
                    })
                    .join();
        } else if (now.wishes().contains(Wish.ASK_PART)) {
            order(now, Act.PART);
            board.call(it -> {
                        it.part(channel);
                        return it;
                    })
                    .join();
        } else if (now.wishes().contains(Wish.ASK_RELEASE)) {
            order(now, Act.RELEASE);
        }
    }

    private void order(Told whom, Act act) {
        orders.println("act " + whom.tag() + " " + act);
    }

    // ---- in the records ----

    private static PassageCard card(StoredRack storage, String tag) {
        return storage.cards().stream()
                .filter(card -> card.cell().tag().equals(tag))
                .findFirst()
                .orElseThrow();
    }

    /** What stands on the passages that are not over, as alarms name it. */
    private static List<Tuple> standing(StoredRack storage) {
        return storage.openCards().stream()
                .flatMap(card -> storage.refold(card).judge().findings().stream()
                        .map(finding -> Tuple.tuple(finding.kind().name(), "passage " + card.id())))
                .toList();
    }
}
