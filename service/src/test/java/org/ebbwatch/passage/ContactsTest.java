package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.passage.ContactInput.Means;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Contacts of a board with two inputs, scan by scan. */
class ContactsTest {
    private static final String BOARD = "bench";
    private static final int INPUTS = 2;

    @TempDir
    private Path folder;

    private StoredRack storage;

    private final List<Set<Means>> told = new ArrayList<>();
    private final List<String> opened = new ArrayList<>();
    private long scans;

    @BeforeEach
    void open() {
        storage = StoredRack.open(folder);
    }

    @AfterEach
    void close() {
        storage.close();
    }

    private RackWatch wired(ContactInput... contacts) {
        var observer = new RackObserver() {
            @Override
            public void changed(List<PassageStanding> passages) {}

            @Override
            public void unheard(String board, long eventMillis) {}

            @Override
            public void heard(String board) {}

            @Override
            public void contacts(String board, long eventMillis, Set<Means> standing) {
                told.add(Set.copyOf(standing));
            }

            @Override
            public void committed() {}
        };
        var control = new PlainBoard() {
            @Override
            public void openAllLoads(String board) {
                opened.add(board);
            }
        };
        var watch = new RackWatch(storage, storage, control, UUID::randomUUID, observer, new Happenings(0));
        watch.expect(BOARD, List.of(contacts));
        watch.identified(BOARD, identity());
        return watch;
    }

    private static Identity identity() {
        Identity plain = PlainBoard.identity(1, 1_000);
        return new Identity(
                plain.bootNumber(),
                plain.clockKind(),
                plain.simulated(),
                plain.hasBuzzer(),
                plain.hasLoadRelay(),
                plain.speed(),
                plain.intervalMillis(),
                plain.hostTimeoutMillis(),
                plain.scales(),
                plain.converter(),
                INPUTS,
                plain.serialNumber(),
                plain.firmware(),
                plain.channels());
    }

    private void scan(RackWatch watch, int... contacts) {
        for (int each : contacts) {
            scans++;
            var host = new HostTime("host", scans * 1_000_000_000, scans * 1_000, WallQuality.KNOWN);
            watch.scan(
                    BOARD,
                    new BoardScan(1).stamp(new LastSeen(scans * 1_000, 1, scans * 1_000, scans, host), each, false));
        }
    }

    @Test
    void smoke_is_believed_after_two_scans_in_a_row_and_told_once() {
        RackWatch watch = wired(new ContactInput(0, Means.SMOKE, false));
        scan(watch, 0, 0, 1, 0, 0);
        assertThat(told).isEmpty();

        scan(watch, 1, 1, 1, 1);

        assertThat(told).containsExactly(Set.of(Means.SMOKE));
        assertThat(opened).containsExactly(BOARD);
        scan(watch, 0, 0);
        assertThat(told).containsExactly(Set.of(Means.SMOKE), Set.of());
        assertThat(opened).containsExactly(BOARD);
    }

    @Test
    void a_contact_that_is_normally_closed_speaks_up_when_its_wire_breaks() {
        RackWatch watch = wired(new ContactInput(1, Means.SMOKE, true));
        scan(watch, 2, 2, 2);
        assertThat(told).isEmpty();

        scan(watch, 0, 0);

        assertThat(told).containsExactly(Set.of(Means.SMOKE));
    }

    @Test
    void lost_mains_open_no_load() {
        RackWatch watch = wired(new ContactInput(1, Means.MAINS_LOST, false));
        scan(watch, 2, 2);

        assertThat(told).containsExactly(Set.of(Means.MAINS_LOST));
        assertThat(opened).isEmpty();
    }

    @Test
    void an_input_the_board_does_not_have_is_named_and_never_smoke() {
        RackWatch watch = wired(new ContactInput(INPUTS, Means.SMOKE, true));
        scan(watch, 0, 0, 0);

        assertThat(told).isEmpty();
        assertThat(watch.view().unwatched())
                .containsExactly("Board bench has no contact input 2: SMOKE is not watched there.");
    }

    @Test
    void a_board_that_comes_while_smoke_stands_opens_its_loads_too() {
        RackWatch watch = wired(new ContactInput(0, Means.SMOKE, false));
        scan(watch, 1, 1);
        watch.identified("other", identity());

        assertThat(opened).containsExactly(BOARD, "other");
    }
}
