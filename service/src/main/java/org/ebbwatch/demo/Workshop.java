package org.ebbwatch.demo;

import static org.ebbwatch.sim.cell.Chemistry.LFP;
import static org.ebbwatch.sim.cell.Chemistry.NMC;
import static org.ebbwatch.sim.fault.Happening.BONDED;
import static org.ebbwatch.sim.fault.Happening.LOAD_CLOSED;
import static org.ebbwatch.sim.fault.Happening.LOAD_OPENED;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.scenario.BoardSpec;

/**
 * The story of the demo, all invented: a repair workshop found a box of sixteen old cells, put them on two boards at ten in
 * the morning and means to hand them over by the end of the week. Some of them have other plans.
 *
 * @param boards the boards of the rack, in order
 */
record Workshop(List<Bench> boards) {
    /** The hour of the day at which event time begins. */
    static final int OPENING_HOUR = 10;

    /** Every old cell holds a little back; this is what brings an empty one up to some tenths of a volt in a day. */
    private static final SlowShare ORDINARY = new SlowShare(0.0012, 60);

    /** One board of the story; its own faults befall the board as a whole. */
    record Bench(String name, List<StoryCell> cells, List<Fault> faults, boolean fallsSilent, boolean checksLeads) {

        Bench(String name, List<StoryCell> cells, List<Fault> faults, boolean fallsSilent) {
            this(name, cells, faults, fallsSilent, true);
        }

        BoardSpec spec() {
            List<Fault> all = new ArrayList<>(faults);
            cells.forEach(cell -> cell.fault().ifPresent(all::add));
            return BoardSpec.build(
                            "SIM-" + name.toUpperCase(java.util.Locale.ROOT),
                            cells.stream().map(StoryCell::channel).toList())
                    .faults(all)
                    .checksLeads(checksLeads)
                    .done();
        }
    }

    static Workshop story() {
        List<StoryCell> window = List.of(
                StoryCell.sound(cell("drill 1", 2.0), 22),
                StoryCell.sound(cell("drill 2", 2.0).diffusion(), 22),
                StoryCell.sound(cell("drill 3", 2.0).slowShare(new SlowShare(0.0025, 20)), 22)
                        .finds(FindingKind.REBOUND),
                StoryCell.sound(CellSpec.build("lamp", LFP, 1.5).spread(0.05).slowShare(ORDINARY), 22),
                StoryCell.sound(cell("speaker", 1.8).protectionBoard(2.5), 22)
                        .finds(FindingKind.CUT_OFF)
                        .isHeldBack(),
                StoryCell.sound(cell("camera", 1.2), 33)
                        .finds(FindingKind.WARMING, FindingKind.HOT)
                        .goesWrong(Fault.on(5, FaultKind.WARMING, Trigger.after(BONDED, hours(6)))
                                .with(Map.of("watts", 0.45, "riseMinutes", 60.0)))
                        .isHeldBack(),
                StoryCell.sound(cell("toy car", 2.2).ohms(0.45), 5.6)
                        .finds(FindingKind.SENSOR_FAULT)
                        .goesWrong(Fault.on(6, FaultKind.THERMISTOR_OFF, Trigger.after(LOAD_CLOSED, hours(2)))
                                .lasting(hours(21))),
                StoryCell.sound(cell("reader", 1.0), 47)
                        .finds(FindingKind.LEAD_OPEN)
                        .goesWrong(Fault.on(7, FaultKind.OPEN_LEAD, Trigger.after(LOAD_OPENED, hours(3))))
                        .isHeldBack());
        List<StoryCell> door = List.of(
                StoryCell.sound(cell("scooter 1", 2.5), 15),
                StoryCell.sound(cell("scooter 2", 2.5).diffusion(), 15),
                StoryCell.sound(cell("scooter 3", 2.5).stateOfCharge(0.3), 15),
                StoryCell.sound(
                        CellSpec.build("torch", LFP, 1.1)
                                .spread(0.05)
                                .slowShare(ORDINARY)
                                .diffusion(),
                        33),
                StoryCell.sound(cell("headset", 0.4), 82),
                StoryCell.sound(cell("radio", 1.6), 22)
                        .finds(FindingKind.STALLED, FindingKind.OVERDUE, FindingKind.WARMING)
                        .goesWrong(Fault.on(5, FaultKind.CHARGER_LEAK, Trigger.after(LOAD_CLOSED, hours(3)))
                                .with(Map.of("volts", 2.3, "ohms", 2.0)))
                        .isHeldBack(),
                StoryCell.sound(cell("tablet", 3.0).diffusion(), 12),
                StoryCell.sound(cell("bicycle", 2.9), 12));
        Fault silence = Fault.onBoard(FaultKind.SILENT, Trigger.at(hours(17))).lasting(minutes(10));
        return new Workshop(List.of(
                new Bench("window", window, List.of(), false), new Bench("door", door, List.of(silence), true)));
    }

    private static CellSpec.Builder cell(String tag, double ampereHours) {
        return CellSpec.build(tag, NMC, ampereHours).spread(0.05).slowShare(ORDINARY);
    }

    private static long hours(long hours) {
        return Duration.ofHours(hours).toMillis();
    }

    private static long minutes(long minutes) {
        return Duration.ofMinutes(minutes).toMillis();
    }
}
