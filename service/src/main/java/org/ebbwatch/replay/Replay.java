package org.ebbwatch.replay;

import java.util.ArrayList;
import java.util.Arrays;
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
 * <p>When the load was on is {@link RecordedLoad}'s to say. The first row is taken to
 * have stood for a minute before the recording. Where no ambient was recorded, the first cell temperature stands for it. The
 * expanded uncertainty is taken as 2 mV and 0.1 %. The silence allowed is three times the usual interval of the recording.
 */
public final class Replay {
    private static final double OFFSET_VOLTS = 2e-3;
    private static final double GAIN = 1e-3;
    private static final double BELIEVABLE_VOLTS = 1e4;
    private static final double USUAL_SHARE = 0.99;
    private static final double LONGEST_SECONDS = 120;
    private static final long STOOD_MILLIS = 60_000;

    private final Recording recording;
    private final Judge judge;
    private final long silentMillis;
    private final RecordedLoad load;
    private final double standInAmbient;
    private final List<Told> told = new ArrayList<>();
    private final List<Entry> journal = new ArrayList<>();

    /** Something that followed, and when: seconds of the recording. */
    public record Told(double seconds, Event event) {}

    private Replay(Recording recording, CellCard cell, Procedure procedure) {
        this.recording = recording;
        this.silentMillis =
                Math.max(procedure.plausible().silentMillis(), Math.round(3 * usualSeconds(recording) * 1000));
        this.judge = new Judge(cell, patient(procedure, silentMillis));
        this.load = new RecordedLoad(recording);
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
        return new RecordedLoad(recording).ohms();
    }

    /** What followed, in order. */
    public List<Told> told() {
        return List.copyOf(told);
    }

    /** What the recording was made into, entry by entry, as it was judged. */
    public List<Entry> journal() {
        return List.copyOf(journal);
    }

    /** The judge as it stands after the last row. */
    public Judge judge() {
        return judge;
    }

    private void run() {
        boolean on = false;
        double before = Double.NaN;
        if (!recording.rows().isEmpty()) {
            stand(recording.rows().get(0));
        }
        for (Row row : recording.rows()) {
            long millis = millis(row);
            long missing = Double.isNaN(before) ? 0 : Math.round((row.seconds() - before) * 1000);
            if (missing > silentMillis) {
                take(new Entry.Gap(millis, missing, missing));
            }
            before = row.seconds();
            if (load.isOn(row, on) != on) {
                on = !on;
                switchLoad(millis, on);
            }
            take(scan(millis, row, on));
        }
    }

    /** Event time begins at the first row's minute. */
    private long millis(Row row) {
        return STOOD_MILLIS
                + Math.round((row.seconds() - recording.rows().get(0).seconds()) * 1000);
    }

    /** For a minute the cell stands as it is read first, without its load. */
    private void stand(Row first) {
        long end = millis(first);
        double none = Double.isNaN(first.amperes()) ? Double.NaN : 0;
        var standing = new Row(first.seconds(), first.volts(), none, first.celsius(), first.ambient());
        for (long millis = end - STOOD_MILLIS; millis < end; millis += 1_000) {
            take(scan(millis, standing, false));
        }
    }

    private static Procedure patient(Procedure procedure, long silentMillis) {
        Procedure.Plausible its = procedure.plausible();
        return new Procedure(
                procedure.name(),
                procedure.version(),
                procedure.drain(),
                procedure.rest(),
                procedure.tieOff(),
                procedure.heat(),
                new Procedure.Plausible(
                        its.lowestVolts(),
                        its.highestVolts(),
                        its.lowestCelsius(),
                        its.highestCelsius(),
                        its.cellCoolingMillis(),
                        its.pauseMillis(),
                        silentMillis));
    }

    private static double usualSeconds(Recording recording) {
        List<Row> rows = recording.rows();
        double[] steps = new double[Math.max(0, rows.size() - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = rows.get(i + 1).seconds() - rows.get(i).seconds();
        }
        Arrays.sort(steps);
        return steps.length == 0 ? 1 : Math.min(LONGEST_SECONDS, steps[(int) (USUAL_SHARE * (steps.length - 1))]);
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

    private Entry.Scan scan(long millis, Row row, boolean loaded) {
        double expanded = OFFSET_VOLTS + GAIN * (Double.isNaN(row.volts()) ? 0 : Math.abs(row.volts()));
        boolean finite = expanded < BELIEVABLE_VOLTS;
        return new Entry.Scan(
                millis,
                row.volts(),
                finite ? expanded : OFFSET_VOLTS,
                recording.resolutionVolts(),
                load.amperes(row),
                row.celsius(),
                Double.isNaN(row.ambient()) ? standInAmbient : row.ambient(),
                Double.NaN,
                Double.NaN,
                loaded,
                Suspicion.NONE);
    }

    private void take(Entry entry) {
        journal.add(entry);
        double seconds = (entry.eventMillis() - STOOD_MILLIS) / 1000.0
                + recording.rows().get(0).seconds();
        judge.fold(entry).events().forEach(event -> told.add(new Told(seconds, event)));
    }
}
