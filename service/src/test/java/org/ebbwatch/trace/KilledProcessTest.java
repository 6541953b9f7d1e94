package org.ebbwatch.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.store.JournalReader;
import org.ebbwatch.store.JournalRow;
import org.ebbwatch.store.JournalStore;
import org.ebbwatch.store.PassageRow;
import org.ebbwatch.store.TransitionRow;
import org.ebbwatch.store.WallLabel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process of our own is killed the hard way while it tells facts. */
class KilledProcessTest {

    private static final UUID PASSAGE = UUID.fromString("0193f0a0-0000-7000-8000-000000000001");
    private static final WallLabel WALL = new WallLabel(0, "unsynchronised");

    @TempDir
    Path directory;

    @Test
    void every_fact_that_was_told_is_there_with_the_readings_that_caused_it() throws Exception {
        long told = killAfter(120);

        try (Database database = H2Database.open(directory);
                TraceStore trace = TraceStore.open(database, directory)) {
            JournalReader journal = new JournalStore(database, trace).reader();
            List<TransitionRow> transitions = journal.transitions(PASSAGE);
            assertThat(transitions.size()).isGreaterThanOrEqualTo((int) told);
            assertThat(journal.journal(PASSAGE)).hasSameSizeAs(transitions);

            long lastCause = transitions.get(transitions.size() - 1).eventMillis();
            assertThat(trace.lastEventMillis(Scans.BOARD).orElseThrow()).isGreaterThanOrEqualTo(lastCause);
            long scans = trace.lastScan(Scans.BOARD).orElseThrow().scan();
            assertThat(Scans.readAll(trace, 1)).isEqualTo(Scans.expected(1, scans, 2, 1));
            assertThat(trace.verifyChain(Scans.BOARD, 1).isWhole()).isTrue();
        }
    }

    private long killAfter(int facts) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledProcessTest.class.getName(),
                        directory.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        long told = 0;
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null && told < facts; line = lines.readLine()) {
                told = line.startsWith("told ") ? Long.parseLong(line.substring(5)) : told;
            }
        } finally {
            process.destroyForcibly().waitFor();
        }
        assertThat(told).isEqualTo(facts);
        return told;
    }

    /** Takes readings and tells a fact after every seventh, until it is killed. */
    public static void main(String[] arguments) {
        Path directory = Path.of(arguments[0]);
        Database database = H2Database.open(directory);
        TraceStore trace = TraceStore.open(database, directory);
        JournalStore journal = new JournalStore(database, trace);
        trace.identified(Scans.BOOT);
        journal.openPassage(new PassageRow(
                PASSAGE, "tag", Scans.BOARD, 0, 0, WALL, "procedure", "cell", false, 1, Optional.empty()));
        for (long fact = 1; fact < 1_000_000; fact++) {
            Scans.append(trace, 7 * fact - 6, 7 * fact, 2);
            journal.append(new JournalRow(PASSAGE, fact, 7000 * fact, 7000 * fact, "said", "{}", WALL));
            journal.transition(new TransitionRow(PASSAGE, fact, 7000 * fact, "DRAIN", "REST", "because"));
            journal.commitFacts();
            System.out.println("told " + fact);
        }
    }
}
