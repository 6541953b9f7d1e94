package org.ebbwatch.rack;

import java.util.Locale;

/** Whether a load bears what a full cell, or a full string, turns into heat in it. */
final class LoadPower {
    private LoadPower() {}

    /** Faults a load whose rated power is exceeded; the voltage only falls from there. */
    static void check(CellEntry cell, int cells, YamlMapping where) {
        double volts = cells * cell.chemistry().fullVolts();
        double leastOhms = cell.loadOhms() * (1 - cell.loadTolerancePercent() / 100);
        double watts = volts * volts / leastOhms;
        if (cell.loadWatts().isPresent() && watts > cell.loadWatts().get()) {
            where.fault(
                    "loadWatts",
                    String.format(
                            Locale.ROOT,
                            "%.2f V turn up to %.2f W into heat in %s ohms, loadWatts is %s: take more ohms, or a resistor rated for"
                                    + " more as it is mounted (one made for a heatsink bears far less without)",
                            volts,
                            watts,
                            cell.loadOhms(),
                            cell.loadWatts().get()));
        }
    }
}
