package org.ebbwatch.passage;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.calibration.BoardScale;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.calibration.CalibrationPoint;
import org.ebbwatch.calibration.CalibrationRule;
import org.ebbwatch.calibration.Meter;
import org.ebbwatch.passage.CalibrationReply.Refused;
import org.ebbwatch.passage.CalibrationReply.Why;

/** One channel being calibrated. Not thread-safe. */
final class ChannelRun {
    private final UUID id;
    private final String board;
    private final String serialNumber;
    private final int channel;
    private final Meter meter;
    private final String by;
    private final BoardScale own;
    private final ChannelReadings readings = new ChannelReadings();
    private final Map<CalibrationSpot, CalibrationPoint> points = new EnumMap<>(CalibrationSpot.class);
    private double latest = Double.NaN;
    private boolean atRail;
    private Optional<Calibration> found = Optional.empty();

    ChannelRun(UUID id, BoardWatch board, int channel, Meter meter, String by) {
        this.id = id;
        this.board = board.name();
        this.serialNumber = board.serialNumber();
        this.channel = channel;
        this.meter = meter;
        this.by = by;
        this.own = board.ownScale();
    }

    UUID id() {
        return id;
    }

    String board() {
        return board;
    }

    int channel() {
        return channel;
    }

    String by() {
        return by;
    }

    Optional<Calibration> found() {
        return found;
    }

    Optional<CalibrationSpot> awaits() {
        for (CalibrationSpot spot : CalibrationSpot.values()) {
            if (!points.containsKey(spot)) {
                return Optional.of(spot);
            }
        }
        return Optional.empty();
    }

    boolean isStill(BoardWatch now) {
        return now.serialNumber().equals(serialNumber);
    }

    /** Takes the latest scan of its board; while a load is on, nothing counts. */
    void read(BoardWatch now) {
        latest = now.ownVolts(channel);
        atRail = now.isAtRail(channel);
        readings.add(now.isLoadApplied(channel) ? Double.NaN : latest);
    }

    /**
     * Takes a point.
     *
     * @param wallMillis now
     * @return why it could not be taken; empty if it was
     */
    Optional<Refused> take(CalibrationSpot spot, double shownVolts, long wallMillis) {
        double shown = spot == CalibrationSpot.SHORTED ? 0 : shownVolts;
        Optional<Refused> refused = refusal(spot, shown);
        if (refused.isPresent()) {
            return refused;
        }
        points.keySet().removeIf(taken -> taken.compareTo(spot) >= 0);
        found = Optional.empty();
        points.put(spot, new CalibrationPoint(shown, readings.mean(), readings.deviation()));
        readings.clear();
        if (awaits().isPresent()) {
            return Optional.empty();
        }
        CalibrationPoint shorted = points.get(CalibrationSpot.SHORTED);
        CalibrationPoint low = points.get(CalibrationSpot.LOW);
        CalibrationPoint high = points.get(CalibrationSpot.HIGH);
        Optional<String> misfit = CalibrationRule.misfit(shorted, low, high);
        if (misfit.isPresent()) {
            points.remove(CalibrationSpot.HIGH);
            return misfit.map(ChannelRun::nonsense);
        }
        var line = CalibrationRule.line(meter, shorted, low, high, own.resolutionVolts());
        found = Optional.of(new Calibration(
                id.toString(),
                serialNumber,
                channel,
                wallMillis,
                by,
                meter,
                shorted,
                low,
                high,
                line.correction(),
                line.residualVolts(),
                !CalibrationRule.ownScaleHolds(own, meter, line.correction(), shorted, low, high)));
        return Optional.empty();
    }

    private Optional<Refused> refusal(CalibrationSpot spot, double shown) {
        if (awaits().isPresent() && spot.compareTo(awaits().get()) > 0) {
            return Optional.of(new Refused(Why.NOT_NOW, "The point " + awaits().get() + " comes before " + spot + '.'));
        }
        if (!(shown >= spot.leastVolts() && shown <= spot.mostVolts())) {
            return Optional.of(nonsense(String.format(
                    Locale.ROOT,
                    "for the point %s the meter shows %.1f to %.1f V, not %.4f V: points that are too close together tell"
                            + " nothing of the slope",
                    spot,
                    spot.leastVolts(),
                    spot.mostVolts(),
                    shown)));
        }
        if (!readings.isComplete()) {
            return Optional.of(new Refused(
                    Why.NOT_NOW,
                    "A point needs " + CalibrationPoint.READINGS + " readings in a row with no load on; "
                            + readings.count() + " have come so far. Hold it, and ask again."));
        }
        Optional<String> nonsense = spot == CalibrationSpot.SHORTED
                ? CalibrationRule.notShorted(readings.mean())
                : atRail
                        ? Optional.of("the channel stands at the end of its range: it cannot read this voltage")
                        : Optional.empty();
        return nonsense.or(
                        () -> CalibrationRule.unsteady(readings.deviation(), readings.drift(), own.resolutionVolts()))
                .map(ChannelRun::nonsense);
    }

    private static Refused nonsense(String what) {
        return new Refused(Why.NONSENSE, what.substring(0, 1).toUpperCase(Locale.ROOT) + what.substring(1) + '.');
    }

    CalibrationRun view() {
        return new CalibrationRun(
                id, board, serialNumber, channel, by, meter, awaits(), readings.count(), latest, points, found);
    }
}
