package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.Standings.card;
import static org.ebbwatch.alarm.Standings.draining;
import static org.ebbwatch.alarm.Standings.finding;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Raised;
import org.ebbwatch.store.AlarmRow;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.store.JournalReader;
import org.ebbwatch.store.JournalStore;
import org.ebbwatch.store.PassageRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process of our own is killed the hard way while it raises alarms. */
class KilledServiceTest {
    private static final int PASSAGES = 90;
    private static final int TOLD_BEFORE_THE_KILL = 40;

    @TempDir
    Path directory;

    @Test
    void every_alarm_that_was_told_is_there_and_none_without_the_finding_that_caused_it() throws Exception {
        List<String> told = killAfterTelling(TOLD_BEFORE_THE_KILL);

        try (Database database = H2Database.open(directory)) {
            var store = new JournalStore(database, () -> {});
            JournalReader journal = store.reader();
            List<String> alarms =
                    store.alarms().living().stream().map(AlarmRow::subject).toList();
            List<String> found = journal.passages().stream()
                    .map(PassageRow::id)
                    .filter(id -> !journal.findings(id).isEmpty())
                    .map(id -> "passage " + id)
                    .toList();

            assertThat(alarms).containsAll(told);
            assertThat(alarms).containsExactlyInAnyOrderElementsOf(found);
            assertThat(store.alarms().unsent("test")).hasSameSizeAs(alarms);
        }
    }

    private List<String> killAfterTelling(int alarms) throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledServiceTest.class.getName(),
                        directory.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        List<String> told = new ArrayList<>();
        try (var lines = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null && told.size() < alarms; line = lines.readLine()) {
                if (line.startsWith("passage ")) {
                    told.add(line);
                }
            }
        } finally {
            process.destroyForcibly().waitFor();
        }
        assertThat(told).hasSize(alarms);
        return told;
    }

    /** Raises one alarm after the other and tells each, until it is killed. */
    public static void main(String[] arguments) {
        var bench = new DeskBench(Path.of(arguments[0]), new HandClock());
        bench.desk.resume(List.of());
        for (int n = 0; n < PASSAGES; n++) {
            bench.rack.opened(card(n));
            bench.rack.happened(card(n).id(), 1, 80_000, new Raised(finding(FindingKind.HOT)));
            bench.changed(draining(n, FindingKind.HOT));
            System.out.println("passage " + card(n).id());
        }
    }
}
