package org.ebbwatch.profile.text;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.acquire.Answer;
import org.ebbwatch.acquire.BoardListener;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.acquire.BoardSession;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.profile.ProfiledBoard;
import org.ebbwatch.profile.file.ProfileFile;
import org.ebbwatch.rack.RackFileFaulty;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.Gap;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.Test;

/** Lines on their whole way through the session of a board, on a clock that the test moves. */
class TextScansTest implements BoardListener {
    private static final String CHANNELS =
            """
            converter: {lowestVolts: 0, highestVolts: 5, offsetMillivolts: 1, gainPercent: 0.1}
            channels:
              - {role: cell, volts: {column: u}}
            """;
    private static final String WITH_CLOCK = "protocol: text\nintervalMillis: 1000\ncolumns: [ms, u]\nclock: ms\n";
    private static final String WITHOUT_CLOCK = "protocol: text\nintervalMillis: 1000\ncolumns: [u]\n";

    private final List<String> heard = new ArrayList<>();
    private long nanos = 1_000_000_000_000L;
    private TextScans scans;
    private ProfiledBoard board;
    private BoardSession session;

    @Test
    void nobody_says_who_it_is_before_a_line_was_understood() throws RackFileFaulty {
        connect(WITH_CLOCK);
        says("boot\r\n1000;3.7\r\n");
        assertThat(heard).containsExactly("WAITING");
        says("1000,3.7\r\n");
        assertThat(heard).containsExactly("WAITING", "CONNECTED", "scan 0: 3.7");
    }

    @Test
    void the_board_s_clock_drives_event_time_over_its_wrap() throws RackFileFaulty {
        connect(WITH_CLOCK);
        says("\n4294966796,3.7\n");
        passes(1_000);
        says("500,3.6\n");
        passes(1_000);
        says("1501,3.5\n");
        assertThat(heard).containsExactly("WAITING", "CONNECTED", "scan 0: 3.7", "scan 1000: 3.6", "scan 2001: 3.5");
    }

    @Test
    void milliseconds_that_fall_are_a_restart() throws RackFileFaulty {
        connect(WITH_CLOCK);
        says("\n3000000000,3.7\n");
        passes(1_000);
        says("3000001000,3.7\n");
        passes(2_000);
        says("300,3.6\n");
        passes(1_000);
        says("1300,3.6\n");
        assertThat(heard)
                .containsExactly(
                        "WAITING",
                        "CONNECTED",
                        "scan 0: 3.7",
                        "scan 1000: 3.7",
                        "rebooted",
                        "gap",
                        "scan 1998: 3.6",
                        "scan 2998: 3.6");
    }

    @Test
    void a_board_without_a_clock_is_stamped_by_the_host() throws RackFileFaulty {
        connect(WITHOUT_CLOCK);
        says("\n3.7\n");
        passes(1_100);
        says("3.6\n");
        assertThat(heard).containsExactly("WAITING", "CONNECTED", "scan 0: 3.7", "scan 1100: 3.6");
    }

    @Test
    void a_short_loss_of_the_link_is_no_restart_and_a_long_one_a_gap() throws RackFileFaulty {
        connect(WITHOUT_CLOCK);
        says("\n3.7\n");
        reconnect();
        passes(3_000);
        says("7\n3.6\n");
        reconnect();
        passes(60_000);
        says("3.\n3.5\n");
        assertThat(heard).doesNotContain("rebooted").filteredOn("gap"::equals).hasSize(1);
        assertThat(heard).endsWith("silent", "gap", "scan 61940: 3.5");
    }

    @Test
    void silence_is_found_and_ends() throws RackFileFaulty {
        connect(WITHOUT_CLOCK);
        says("\n3.7\n");
        for (int look = 0; look < 60; look++) {
            passes(100);
            says("rubbish\n");
        }
        assertThat(heard).endsWith("CONNECTED", "silent");
        assertThat(session.counts().badFrames()).isEqualTo(60);
        says("3.6\n");
        assertThat(heard.get(heard.size() - 1)).startsWith("scan");
    }

    @Test
    void lines_that_do_not_fit_are_told_after_three_and_forgotten_with_the_next_that_does() throws RackFileFaulty {
        connect(WITH_CLOCK);
        says("\n1000,3.7\n1,2,3\n1,2,3\n");
        assertThat(board.remark()).isEmpty();
        says("1,2,3\n");
        assertThat(board.remark()).isEqualTo("A line has 3 columns instead of 2: \"1,2,3\".");
        says("2000,3.7\n");
        assertThat(board.remark()).isEmpty();
    }

    private void connect(String profile) throws RackFileFaulty {
        TextProfile text = (TextProfile) ProfileFile.parse(profile + CHANNELS, "profile.yml");
        scans = new TextScans(text);
        board = new ProfiledBoard(text.description(), "T-1");
        session = new BoardSession(
                "bench", Optional.empty(), EventClock.fresh(), this, bytes -> board.accept(bytes, 0, bytes.length));
        session.opened(now());
    }

    private void reconnect() {
        session.lost("unplugged", now());
        scans.opened();
        board.opened();
        session.opened(now());
    }

    private void says(String text) {
        byte[] bytes = text.getBytes(ISO_8859_1);
        scans.accept(bytes, bytes.length, nanos, board);
        session.remark(board.remark());
        byte[] frames = new byte[4_096];
        session.accept(frames, 0, board.take(frames), now());
        session.tick(now());
    }

    private void passes(long millis) {
        nanos += millis * 1_000_000;
    }

    private HostTime now() {
        return new HostTime("boot", nanos, nanos / 1_000_000, WallQuality.KNOWN);
    }

    @Override
    public void identified(String name, Identity identity) {
        assertThat(identity.serialNumber()).isEqualTo("T-1");
    }

    @Override
    public void scan(String name, BoardScan scan) {
        heard.add("scan " + scan.eventMillis() + ": " + scan.volts()[0] / 1e6);
    }

    @Override
    public void silent(String name, long eventMillis) {
        heard.add("silent");
    }

    @Override
    public void gap(String name, Gap gap) {
        heard.add("gap");
    }

    @Override
    public void rebooted(String name, long bootNumber) {
        heard.add("rebooted");
    }

    @Override
    public void clockOdd(String name, double ratio, boolean odd) {
        heard.add("clock odd");
    }

    @Override
    public void leadChecked(String name, int channel, LeadOutcome outcome, int before, int during) {
        throw new AssertionError("nobody asked");
    }

    @Override
    public void answered(String name, int requestSequence, Answer answer) {
        throw new AssertionError("nobody asked");
    }

    @Override
    public void link(String name, LinkState state, String detail) {
        heard.add(state.name());
    }
}
