package org.ebbwatch.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.AfterTry;
import net.jqwik.api.lifecycle.BeforeTry;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.trace.codec.ValueKinds;

/** The trace against a plain list, through any mixture of runs, restarts and crashes. */
class TraceStorePropertyTest {

    private static final int CHANNELS = 3;

    private enum Step {
        APPEND_FAST,
        APPEND_SLOW,
        BOARD_STARTS_AGAIN,
        BOARD_CHANGES_SHAPE,
        BOARD_IS_CALIBRATED,
        SEAL,
        FLUSH,
        RESTART,
        CRASH
    }

    private List<Scans.Sample> appended;
    private Path directory;
    private Database database;
    private TraceStore trace;
    private int flushed;
    private long boot;
    private long scan;
    private long eventMillis;
    private boolean withAmperes;
    private int identities;

    @BeforeTry
    void open() throws IOException {
        appended = new ArrayList<>();
        flushed = 0;
        boot = 1;
        scan = 0;
        eventMillis = 0;
        directory = Files.createTempDirectory("trace");
        database = H2Database.open(directory);
        trace = TraceStore.open(database, directory);
    }

    @AfterTry
    void close() throws IOException {
        trace.close();
        database.close();
        try (Stream<Path> files = Files.walk(directory)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    @Property(tries = 40)
    void whatever_happens_the_trace_is_what_was_appended(
            @ForAll @Size(min = 1, max = 25) List<Step> steps, @ForAll @IntRange(min = 1, max = 1500) int most) {
        for (int i = 0; i < steps.size(); i++) {
            take(steps.get(i), 1 + (7919 * (i + 1)) % most);
        }

        assertThat(read()).isEqualTo(appended);
        for (int channel = 0; channel < CHANNELS; channel++) {
            assertThat(trace.verifyChain(Scans.BOARD, channel).faults()).isEmpty();
        }
    }

    private void take(Step step, int scans) {
        switch (step) {
            case APPEND_FAST -> append(scans, 10);
            case APPEND_SLOW -> append(scans, 2_000);
            case BOARD_STARTS_AGAIN -> {
                boot++;
                scan = 0;
            }
            case BOARD_CHANGES_SHAPE -> withAmperes = !withAmperes;
            case BOARD_IS_CALIBRATED -> identities++;
            case SEAL -> {
                trace.sealAll();
                flushed = appended.size();
            }
            case FLUSH -> {
                trace.flush();
                flushed = appended.size();
            }
            case RESTART -> {
                trace.close();
                flushed = appended.size();
                trace = TraceStore.open(database, directory);
            }
            case CRASH -> crash();
        }
    }

    private void append(int scans, long intervalMillis) {
        trace.identified(new BoardBoot(Scans.BOARD, boot, ValueKinds.COUNTS, "identity " + identities));
        for (int i = 0; i < scans; i++) {
            scan++;
            eventMillis += intervalMillis;
            RowBuffer row = Scans.row(boot, scan, eventMillis, CHANNELS);
            row.withAmperes = withAmperes;
            trace.append(Scans.BOARD, row);
            appended.add(Scans.sample(row, CHANNELS - 1));
        }
    }

    /** What was only in memory is gone; what was flushed must be there, and nothing may have a hole. */
    private void crash() {
        trace.tail.close();
        trace = TraceStore.open(database, directory);
        List<Scans.Sample> left = read();
        assertThat(left.size()).isBetween(flushed, appended.size());
        assertThat(left).isEqualTo(appended.subList(0, left.size()));
        appended.subList(left.size(), appended.size()).clear();
        flushed = left.size();
    }

    private List<Scans.Sample> read() {
        return Scans.readAll(trace, CHANNELS - 1);
    }
}
