package org.ebbwatch.calibration;

import static java.util.Objects.requireNonNull;

/**
 * A calibration of one channel of one board, as it was made and kept.
 *
 * @param id a UUID
 * @param serialNumber of the board
 * @param channel from 0
 * @param madeWallMillis when, by the host's wall clock
 * @param by who, as that person said
 * @param meter with which
 * @param shorted leads shorted
 * @param low about 0.5 V
 * @param high about 4 V
 * @param correction what follows
 * @param residualVolts how far the point that lies farthest off is from the correction's line
 * @param applied false where the board's own scale was found to hold, and is known better than by this meter
 */
public record Calibration(
        String id,
        String serialNumber,
        int channel,
        long madeWallMillis,
        String by,
        Meter meter,
        CalibrationPoint shorted,
        CalibrationPoint low,
        CalibrationPoint high,
        Correction correction,
        double residualVolts,
        boolean applied) {
    /** A calibration older than this is to be made anew (common practice, no source). */
    public static final int GOOD_DAYS = 365;

    private static final long DAY_MILLIS = 86_400_000;

    public Calibration {
        requireNonNull(id);
        requireNonNull(serialNumber);
        requireNonNull(by);
        requireNonNull(meter);
        requireNonNull(shorted);
        requireNonNull(low);
        requireNonNull(high);
        requireNonNull(correction);
    }

    /** Whole days since it was made; 0 where the clock says that it is yet to be made. */
    public long ageDays(long nowWallMillis) {
        return Math.max(0, (nowWallMillis - madeWallMillis) / DAY_MILLIS);
    }

    /** Whether it is too old to go by. */
    public boolean isOld(long nowWallMillis) {
        return isOld(madeWallMillis, nowWallMillis);
    }

    /** The same of one made then. */
    public static boolean isOld(long madeWallMillis, long nowWallMillis) {
        return (nowWallMillis - madeWallMillis) / DAY_MILLIS > GOOD_DAYS;
    }
}
