package org.ebbwatch.profile;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntPredicate;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.rig.sensor.Conversion;

/**
 * The readings of a scan, in a board's counts: a microvolt, a microampere and a millikelvin, far below what a device read by a
 * profile can tell. What is no number, or none that a count can hold, is not valid and never 0.
 */
final class Counts {
    static final Scales SCALES = new Scales(1_000, 1_000, 1_000);

    private static final double PER_VOLT = 1e6;
    private static final double PER_AMPERE = 1e6;
    private static final double PER_KELVIN = 1e3;

    private Counts() {}

    /**
     * One reading for each channel.
     *
     * @param raws the scan's raw numbers; NaN for one that did not come
     * @param loadApplied whether the load of a channel is connected
     */
    static List<Reading> readings(Description device, double[] raws, IntPredicate loadApplied) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < device.channels().size(); i++) {
            readings.add(reading(device.channels().get(i), device.converter(), raws, loadApplied.test(i)));
        }
        return readings;
    }

    static OptionalInt ofVolts(double volts) {
        return of(volts, PER_VOLT);
    }

    private static Reading reading(
            ProfiledChannel channel, VoltsConverter converter, double[] raws, boolean loadApplied) {
        int state = loadApplied ? Reading.LOAD_APPLIED : 0;
        OptionalInt volts = OptionalInt.empty();
        if (channel.volts().isPresent()) {
            double measured = channel.volts().get().of(raws);
            volts = converter.isAbsurd(measured) ? OptionalInt.empty() : ofVolts(measured);
            state |= volts.isPresent() ? Reading.VOLTS_VALID : 0;
            state |= volts.isPresent() && converter.isAtRail(measured) ? Reading.VOLTS_AT_RAIL : 0;
        }
        OptionalInt amperes =
                channel.amperes().map(it -> of(it.of(raws), PER_AMPERE)).orElse(OptionalInt.empty());
        state |= amperes.isPresent() ? Reading.AMPERES_VALID : 0;
        OptionalInt celsius = OptionalInt.empty();
        if (channel.temperature().isPresent()) {
            Conversion conversion = channel.temperature().get().in(raws);
            if (conversion instanceof Conversion.Celsius found) {
                celsius = of(found.celsius(), PER_KELVIN);
                state |= celsius.isPresent() ? Reading.CELSIUS_VALID : 0;
            } else {
                state |= bits((Conversion.Fault) conversion);
            }
        }
        return new Reading(state, volts.orElse(0), celsius.orElse(0), amperes.orElse(0));
    }

    private static int bits(Conversion.Fault fault) {
        return switch (fault) {
            case OPEN -> Reading.SENSOR_OPEN;
            case SHORT, OUT_OF_RANGE -> Reading.CELSIUS_AT_RAIL;
            case NOT_MEASURED, NOT_A_NUMBER -> 0;
        };
    }

    private static OptionalInt of(double quantity, double perUnit) {
        double counts = Math.rint(quantity * perUnit);
        return counts >= Integer.MIN_VALUE && counts <= Integer.MAX_VALUE
                ? OptionalInt.of((int) counts)
                : OptionalInt.empty();
    }
}
