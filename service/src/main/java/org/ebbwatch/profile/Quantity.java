package org.ebbwatch.profile;

/**
 * How one of a scan's raw numbers becomes a quantity in its own unit: number times scale plus offset.
 *
 * @param raw index of the raw number
 * @param scale units of the quantity for each unit of the number, not 0
 * @param offset units of the quantity at number 0
 */
public record Quantity(int raw, double scale, double offset) {
    /** A raw number by which the device says that its sensor is open. */
    public static final double OPEN = Double.POSITIVE_INFINITY;

    public Quantity {
        if (raw < 0 || !Double.isFinite(scale) || scale == 0 || !Double.isFinite(offset)) {
            throw new IllegalArgumentException("raw must be 0 or more, scale finite and not 0, offset finite");
        }
    }

    /** The quantity; NaN where the scan holds no such number or its sensor is open. */
    public double of(double[] raws) {
        return isOpen(raws) ? Double.NaN : raws[raw] * scale + offset;
    }

    /** Whether the device says that the sensor is open. */
    public boolean isOpen(double[] raws) {
        return raws[raw] == OPEN;
    }
}
