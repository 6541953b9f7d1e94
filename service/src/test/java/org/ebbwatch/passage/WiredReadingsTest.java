package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A board that calls all its channels cells, and a rack file that knows better. */
class WiredReadingsTest {
    private static final String BOARD = "left";
    private static final int CELL = 0;
    private static final int LOAD_SENSOR = 1;
    private static final int AMBIENT = 2;
    private static final int DUMMY = 3;
    private static final int OTHER_CELL = 4;
    private static final int[] CELSIUS = {25, 60, 21, 22, 24};

    @TempDir
    Path folder;

    private StoredRack storage;
    private RackWatch watch;
    private long millis;
    private long nextId;
    private boolean loadOn;

    @BeforeEach
    void begin() {
        storage = StoredRack.open(folder);
        watch = new RackWatch(storage, storage, new PlainBoard(), () -> new UUID(0x7000, ++nextId));
        watch.expect(BOARD);
    }

    @AfterEach
    void close() {
        storage.close();
    }

    private void wire(Wiring wiring) {
        watch.wire(BOARD, wiring);
        watch.identified(BOARD, PlainBoard.identity(5, 1_000));
        scans(1, 60);
    }

    private static Wiring thermometers() {
        return new Wiring(
                Map.of(LOAD_SENSOR, ChannelRole.BANK, AMBIENT, ChannelRole.AMBIENT, DUMMY, ChannelRole.DUMMY),
                Map.of(CELL, LOAD_SENSOR),
                Map.of(CELL, 0.01));
    }

    private void scans(int scans, int loadCelsius) {
        for (int i = 0; i < scans; i++) {
            millis += 1_000;
            var host = new HostTime("host", millis * 1_000_000, 1_750_000_000_000L + millis, WallQuality.KNOWN);
            BoardScan scan = new BoardScan(5).stamp(new LastSeen(millis, 1, millis, millis / 1_000, host), 0, false);
            for (int channel = 0; channel < 5; channel++) {
                int state = Reading.VOLTS_VALID
                        | Reading.CELSIUS_VALID
                        | (loadOn && channel == CELL ? Reading.LOAD_APPLIED : 0);
                int celsius = channel == LOAD_SENSOR ? loadCelsius : CELSIUS[channel];
                scan.channel(channel, state, 40_000 + i % 2, celsius * 1_000 + i % 2, 0);
            }
            watch.scan(BOARD, scan);
        }
    }

    private PassageCard checkIn(int channel, String tag) {
        return watch.checkIn(
                BOARD,
                channel,
                new CellCard(tag, Chemistry.LAYERED_OXIDE, 1.5, 10, false, false),
                Procedure.careful(),
                1_750_000_000_000L);
    }

    private Entry.Scan reading(int channel) {
        return watch.readings(BOARD).get(channel);
    }

    private ChannelView channel(int number) {
        return watch.view().channels().get(number);
    }

    private boolean isLoadHot(int channel) {
        return watch.view().on(BOARD, channel).orElseThrow().findings().stream()
                .anyMatch(finding -> finding.kind() == FindingKind.LOAD_HOT);
    }

    @Test
    void its_thermometers_are_where_the_rack_file_says() {
        wire(thermometers());
        assertThat(reading(CELL).ambientCelsius()).isEqualTo(21);
        assertThat(reading(CELL).referenceCelsius()).isEqualTo(22);
        assertThat(channel(AMBIENT).role()).isEqualTo(ChannelRole.AMBIENT);
    }

    @Test
    void without_a_rack_files_word_the_boards_own_stands() {
        wire(Wiring.NONE);
        assertThat(reading(CELL).ambientCelsius()).isNaN();
        assertThat(channel(AMBIENT).role()).isEqualTo(ChannelRole.CELL);
    }

    @Test
    void a_hot_load_is_the_matter_of_its_own_cell_alone() {
        wire(thermometers());
        checkIn(CELL, "A");
        checkIn(OTHER_CELL, "B");
        scans(5, 60);
        assertThat(isLoadHot(CELL)).isFalse();
        scans(5, (int) Procedure.careful().heat().bankCelsius() + 1);
        assertThat(isLoadHot(CELL)).isTrue();
        assertThat(isLoadHot(OTHER_CELL)).isFalse();
    }

    @Test
    void leads_that_the_load_draws_through_add_to_the_uncertainty_while_it_does() {
        wire(thermometers());
        double off = channel(CELL).expandedVolts();
        loadOn = true;
        scans(1, 60);
        // 4.0 V over ten ohms draw 0.4 A; leads of 0.1 ohms (a hundredth of the load) take 40 mV of them.
        assertThat(channel(CELL).expandedVolts()).isCloseTo(Math.hypot(off, 0.04), within(1e-5));
        assertThat(channel(OTHER_CELL).expandedVolts()).isCloseTo(off, within(1e-9));
    }

    @Test
    void it_reads_the_same_when_it_is_judged_again() {
        wire(thermometers());
        PassageCard card = checkIn(CELL, "A");
        List<Double> live = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            scans(1, 60 + i);
            live.add(reading(CELL).bankCelsius());
        }
        storage.flush();
        List<Double> told = new ArrayList<>();
        storage.read(card, new JournalTaker() {
            @Override
            public boolean scan(long sequence, Entry.Scan scan) {
                return told.add(scan.bankCelsius());
            }

            @Override
            public boolean entry(long sequence, KeptEntry kept) {
                return true;
            }
        });
        assertThat(told).isEqualTo(live).last().isEqualTo(64.0);
    }

    @Test
    void a_thermometer_that_is_not_there_is_told() {
        wire(new Wiring(Map.of(9, ChannelRole.AMBIENT), Map.of(CELL, 8), Map.of()));
        assertThat(watch.view().unwatched())
                .containsExactly(
                        "Board left has no channel 9 that reads a temperature: AMBIENT is not watched there.",
                        "Board left has no channel 8 that reads a temperature: the load of channel 0 is not watched for heat.");
        scans(3, 60);
        assertThat(reading(CELL).bankCelsius()).isNaN();
    }
}
