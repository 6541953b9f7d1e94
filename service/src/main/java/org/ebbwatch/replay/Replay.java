package org.ebbwatch.replay;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.replay.Recording.Row;

/**
 * Judges a recording as if a person had put the load on and taken it off by hand whenever the current began and ended.
 *
 * <p>The load counts as on while the current is above a hundredth of its greatest believable value. Where no ambient was
 * recorded, the first cell temperature stands for it. The expanded uncertainty is taken as 2 mV and 0.1 % unless the caller
 * knows better.
 */
public final class Replay {
    private static final double OFFSET_VOLTS = 2e-3;
    private static final double GAIN = 1e-3;
    private static final double LOAD_SHARE = 0.01;
    private static final double BELIEVABLE_AMPERES = 1e4;
    private static final double GAP_SECONDS = 60;

    private final Recording recording;
    private final Judge judge;
    private final double loadAmperes;
    private final double standInAmbient;
    private final List<Told> told = new ArrayList<>();

    /** Something that followed, and when: seconds of the recording. */
    public record Told(double seconds, Event event) {}

    private Replay(Recording recording, CellCard cell, Procedure procedure) {
        this.recording = recording;
        this.judge = new Judge(cell, procedure);
        this.loadAmperes = LOAD_SHARE * greatestAmperes(recording);
        this.standInAmbient = recording.rows().stream()
                .mapToDouble(Row::celsius)
                .filter(Double::isFinite)
                .findFirst()
                .orElse(Double.NaN);
    }

    /**
     * Judges a recording from check-in to its last row.
     *
     * @param cell a card whose load is put on by hand
     */
    public static Replay judge(Recording recording, CellCard cell, Procedure procedure) {
        var replay = new Replay(recording, cell, procedure);
        replay.run();
        return replay;
    }

    /** The load in ohms that a recording suggests: the median of volts over amperes while current flowed. */
    public static double suggestedOhms(Recording recording) {
        double least = LOAD_SHARE * greatestAmperes(recording);
        double[] ohms = recording.rows().stream()
                .filter(row -> row.amperes() > least && row.amperes() < BELIEVABLE_AMPERES && row.volts() > 0)
                .mapToDouble(row -> row.volts() / row.amperes())
                .sorted()
                .toArray();
        return ohms.length == 0 ? Double.NaN : ohms[ohms.length / 2];
    }

    /** What followed, in order. */
    public List<Told> told() {
        return List.copyOf(told);
    }

    /** The judge as it stands after the last row. */
    public Judge judge() {
        return judge;
    }

    private void run() {
        boolean on = false;
        double before = Double.NaN;
        for (Row row : recording.rows()) {
            long millis = Math.round(row.seconds() * 1000);
            if (row.seconds() - before > GAP_SECONDS) {
                long missing = Math.round((row.seconds() - before) * 1000);
                take(new Entry.Gap(millis, missing, missing));
            }
            before = row.seconds();
            boolean believable = Math.abs(row.amperes()) < BELIEVABLE_AMPERES;
            boolean flows = believable ? row.amperes() > loadAmperes : on;
            if (flows != on) {
                on = flows;
                switchLoad(millis, on);
            }
            take(scan(millis, row));
        }
    }

    private void switchLoad(long millis, boolean on) {
        if (on) {
            boolean held = judge.phase() == Phase.HELD && judge.allowed().contains(Act.DRAIN_AGAIN);
            take(new Entry.Acted(millis, held ? Act.DRAIN_AGAIN : Act.PUT_ON));
            if (held) {
                take(new Entry.Acted(millis, Act.PUT_ON));
            }
        } else {
            take(new Entry.Acted(millis, Act.TAKE_OFF));
        }
    }

    private Entry.Scan scan(long millis, Row row) {
        double expanded = OFFSET_VOLTS + GAIN * (Double.isNaN(row.volts()) ? 0 : Math.abs(row.volts()));
        boolean finite = Double.isFinite(expanded) && expanded < BELIEVABLE_AMPERES;
        return new Entry.Scan(
                millis,
                row.volts(),
                finite ? expanded : OFFSET_VOLTS,
                recording.resolutionVolts(),
                row.amperes(),
                row.celsius(),
                Double.isNaN(row.ambient()) ? standInAmbient : row.ambient(),
                Double.NaN,
                Double.NaN,
                false,
                Suspicion.NONE);
    }

    private void take(Entry entry) {
        double seconds = entry.eventMillis() / 1000.0;
        judge.fold(entry).events().forEach(event -> told.add(new Told(seconds, event)));
    }

    private static double greatestAmperes(Recording recording) {
        return recording.rows().stream()
                .mapToDouble(Row::amperes)
                .filter(amperes -> Math.abs(amperes) < BELIEVABLE_AMPERES)
                .max()
                .orElse(0);
    }
}
