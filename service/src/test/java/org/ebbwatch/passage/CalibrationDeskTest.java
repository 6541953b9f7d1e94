package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ebbwatch.passage.CalibrationSpot.HIGH;
import static org.ebbwatch.passage.CalibrationSpot.LOW;
import static org.ebbwatch.passage.CalibrationSpot.SHORTED;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.calibration.Meter;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.CalibrationReply.Kept;
import org.ebbwatch.passage.CalibrationReply.Refused;
import org.ebbwatch.passage.CalibrationReply.Running;
import org.ebbwatch.passage.CalibrationReply.Why;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CalibrationDeskTest {
    private static final String BOARD = "left";
    private static final int CHANNEL = 1;
    private static final Meter METER = new Meter("bench meter", 0.0005, 0.0001);
    private static final long WALL_MILLIS = 1_750_000_000_000L;

    @TempDir
    Path folder;

    private StoredRack storage;
    private RackWatch watch;
    private CalibrationDesk desk;
    private long millis;
    private long nextId;

    @BeforeEach
    void begin() {
        storage = StoredRack.open(folder);
        watch = new RackWatch(storage, storage, new PlainBoard(), () -> new UUID(0x7000, ++nextId));
        desk = new CalibrationDesk(watch, storage, () -> new UUID(0x7000, ++nextId), this::now);
        watch.expect(BOARD);
        storage.openCards().forEach(card -> watch.takeUp(storage.takeUp(card)));
        watch.identified(BOARD, PlainBoard.identity(3, 1_000));
        reads(1, 0);
    }

    @AfterEach
    void close() {
        storage.close();
    }

    private void restart() {
        storage.close();
        begin();
    }

    private HostTime now() {
        return new HostTime("host", millis * 1_000_000, WALL_MILLIS + millis, WallQuality.KNOWN);
    }

    /** So many scans in which every channel of the board reads so many counts of 0.1 mV. */
    private void reads(int scans, int counts) {
        for (int i = 0; i < scans; i++) {
            millis += 1_000;
            BoardScan scan = new BoardScan(3).stamp(new LastSeen(millis, 1, millis, millis / 1_000, now()), 0, false);
            for (int channel = 0; channel < 3; channel++) {
                scan.channel(channel, Reading.VOLTS_VALID | Reading.CELSIUS_VALID, counts + i % 2, 21_000 + i % 2, 0);
            }
            watch.scan(BOARD, scan);
        }
    }

    private UUID start() {
        var reply = desk.beginCalibration(BOARD, CHANNEL, METER, "Anna", "key-" + millis);
        assertThat(reply).isInstanceOf(Running.class);
        return ((Running) reply).run().id();
    }

    private CalibrationReply take(UUID run, CalibrationSpot spot, double shown, int counts) {
        reads(10, counts);
        return desk.takePoint(run, spot, shown);
    }

    /** A board that reads 1 % too little and 20 mV too much. */
    private Calibration calibrate() {
        UUID run = start();
        assertThat(take(run, SHORTED, 0, 200)).isInstanceOf(Running.class);
        assertThat(take(run, LOW, 0.5, 200 + 4_950)).isInstanceOf(Running.class);
        assertThat(take(run, HIGH, 4.0, 200 + 39_600)).isInstanceOf(Running.class);
        assertThat(desk.keepCalibration(run)).isInstanceOf(Kept.class);
        return desk.calibrations().get(0).calibration();
    }

    private static Refused refused(CalibrationReply reply) {
        assertThat(reply).isInstanceOf(Refused.class);
        return (Refused) reply;
    }

    private ChannelView channel(int number) {
        return watch.view().channels().get(number);
    }

    private PassageCard checkIn() {
        return watch.checkIn(
                BOARD,
                CHANNEL,
                new CellCard("A-17", Chemistry.LAYERED_OXIDE, 1.5, 10, false, false),
                Procedure.careful(),
                WALL_MILLIS + millis);
    }

    private List<Entry> told(PassageCard card) {
        storage.flush();
        List<Entry> told = new ArrayList<>();
        storage.read(card, new JournalTaker() {
            @Override
            public boolean scan(long sequence, Entry.Scan scan) {
                return told.add(scan);
            }

            @Override
            public boolean entry(long sequence, KeptEntry kept) {
                return told.add(kept.entry());
            }
        });
        return told;
    }

    @Test
    void a_channel_reads_right_from_its_calibration_on_and_no_other_does() {
        calibrate();
        reads(2, 200 + 19_800);
        assertThat(channel(CHANNEL).volts()).isCloseTo(2.0, within(2e-4));
        assertThat(channel(0).volts()).isCloseTo(2.0001, within(1e-9));
    }

    @Test
    void its_uncertainty_takes_the_place_of_the_boards_own() {
        reads(2, 39_800);
        double before = channel(CHANNEL).expandedVolts();
        calibrate();
        reads(2, 39_800);
        assertThat(channel(CHANNEL).expandedVolts()).isNotEqualTo(before).isPositive();
    }

    @Test
    void it_holds_after_a_restart_and_for_that_board_alone() {
        calibrate();
        restart();
        reads(2, 200 + 19_800);
        assertThat(channel(CHANNEL).volts()).isCloseTo(2.0, within(2e-4));
        assertThat(desk.calibrations()).singleElement().satisfies(kept -> assertThat(kept.current())
                .isTrue());
    }

    @Test
    void what_was_read_before_and_after_reads_the_same_when_it_is_judged_again() {
        Calibration first = calibrate();
        reads(3, 200 + 36_630);
        PassageCard card = checkIn();
        List<Double> live = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            reads(1, 200 + 36_630);
            live.add(channel(CHANNEL).volts());
        }
        desk.withdrawCalibration(UUID.fromString(first.id()), "Anna", "The meter's battery was low.");
        for (int i = 0; i < 5; i++) {
            reads(1, 200 + 36_630);
            live.add(channel(CHANNEL).volts());
        }
        List<Entry> told = told(card);
        assertThat(told.stream()
                        .filter(Entry.Scan.class::isInstance)
                        .map(entry -> ((Entry.Scan) entry).volts())
                        .toList())
                .isEqualTo(live);
        assertThat(live.get(0)).isCloseTo(3.7, within(2e-4));
        assertThat(live.get(9)).isCloseTo(3.683, within(2e-4));
        assertThat(told.get(5)).as("between them").isInstanceOf(Entry.CalibrationChanged.class);
        assertThat(storage.refold(card).events()).isEqualTo(storage.recorded(card));
        restart();
        assertThat(told(card).subList(0, told.size())).isEqualTo(told);
    }

    @Test
    void a_calibration_withdrawn_is_kept_with_its_reason_and_the_one_before_holds_again() {
        Calibration first = calibrate();
        Calibration second = calibrate();
        desk.withdrawCalibration(UUID.fromString(second.id()), "Ben", "Misread.");
        restart();
        assertThat(desk.calibrations())
                .hasSize(2)
                .satisfiesExactly(
                        withdrawn -> {
                            assertThat(withdrawn.calibration()).isEqualTo(second);
                            assertThat(withdrawn.withdrawal().orElseThrow().reason())
                                    .isEqualTo("Misread.");
                            assertThat(withdrawn.current()).isFalse();
                        },
                        current -> {
                            assertThat(current.calibration()).isEqualTo(first);
                            assertThat(current.current()).isTrue();
                        });
    }

    @Test
    void a_channel_with_a_cell_on_it_is_refused_before_and_during_a_calibration() {
        UUID run = start();
        reads(10, 37_000);
        checkIn();
        assertThat(refused(desk.takePoint(run, SHORTED, 0)).why()).isEqualTo(Why.TAKEN);
        desk.giveUpCalibration(run);
        assertThat(refused(desk.beginCalibration(BOARD, CHANNEL, METER, "Anna", "another-key"))
                        .detail())
                .contains("A-17")
                .contains("CHECK_IN");
    }

    @Test
    void shorted_leads_that_read_a_cell_are_refused() {
        UUID run = start();
        assertThat(refused(take(run, SHORTED, 0, 29_000)).detail()).contains("Never short a cell");
        assertThat(desk.calibrationRun().orElseThrow().awaits()).contains(SHORTED);
    }

    @Test
    void points_come_in_order_with_enough_steady_readings_and_within_their_range() {
        UUID run = start();
        reads(9, 0);
        assertThat(refused(desk.takePoint(run, SHORTED, 0)).detail()).contains("9 have come");
        assertThat(refused(take(run, LOW, 0.5, 0)).why()).isEqualTo(Why.NOT_NOW);
        assertThat(take(run, SHORTED, 0, 0)).isInstanceOf(Running.class);
        reads(5, 5_000);
        reads(5, 5_100);
        assertThat(refused(desk.takePoint(run, LOW, 0.5)).detail()).contains("not steady");
        assertThat(refused(take(run, LOW, 0.1, 1_000)).detail()).contains("0.3 to 0.8 V");
        assertThat(take(run, LOW, 0.5, 5_000)).isInstanceOf(Running.class);
        assertThat(refused(take(run, HIGH, 1.0, 10_000)).detail()).contains("too close");
        assertThat(refused(take(run, HIGH, 4.0, 20_000)).detail()).contains("10 % off");
        assertThat(refused(desk.keepCalibration(run)).why()).isEqualTo(Why.NOT_NOW);
    }

    @Test
    void one_runs_at_a_time_and_one_that_nobody_goes_on_with_is_given_up() {
        UUID run = start();
        assertThat(refused(desk.beginCalibration(BOARD, 0, METER, "Ben", "other-key"))
                        .why())
                .isEqualTo(Why.BUSY);
        reads(1_801, 0);
        assertThat(refused(desk.takePoint(run, SHORTED, 0)).why()).isEqualTo(Why.UNKNOWN);
        assertThat(desk.beginCalibration(BOARD, 0, METER, "Ben", "other-key")).isInstanceOf(Running.class);
    }

    @Test
    void to_keep_twice_is_to_keep_once() {
        Calibration kept = calibrate();
        assertThat(desk.keepCalibration(UUID.fromString(kept.id()))).isInstanceOf(Kept.class);
        assertThat(desk.calibrations()).hasSize(1);
    }
}
