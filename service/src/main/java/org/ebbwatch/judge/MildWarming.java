package org.ebbwatch.judge;

/**
 * Tells a slight warming, which sun, a heater or a draught may cause in many cells at once, from one that only the cell itself can
 * cause. Used where alarms are gathered; no verdict rests on it.
 */
public final class MildWarming {
    /** As fast as this nothing outside a cell warms it (procedure: never grouped). */
    public static final double FAST_KELVIN_PER_MINUTE = 1;

    private MildWarming() {}

    /**
     * Whether a finding is a slight warming: over the limit against its reference, or slow evidence, and not at the limit for any
     * cell, not fast, and not on the way to HOT.
     */
    public static boolean is(Finding finding) {
        if (finding.kind() != FindingKind.WARMING) {
            return false;
        }
        return switch (finding.unit()) {
            case "K" -> true;
            case "K/s" ->
                finding.limit() == HeatWatch.TELLING_KELVIN_PER_SECOND && finding.seen() * 60 < FAST_KELVIN_PER_MINUTE;
            default -> false;
        };
    }
}
