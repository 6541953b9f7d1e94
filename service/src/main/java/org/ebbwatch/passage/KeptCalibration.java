package org.ebbwatch.passage;

import java.util.Optional;
import org.ebbwatch.calibration.Calibration;

/**
 * A calibration that was kept.
 *
 * @param withdrawal who found it wrong, when and why; empty while nobody has
 * @param current whether it is the one its channel goes by
 */
public record KeptCalibration(Calibration calibration, Optional<Withdrawal> withdrawal, boolean current) {

    /**
     * It was found wrong.
     *
     * @param wallMillis when, by the host's wall clock
     */
    public record Withdrawal(long wallMillis, String by, String reason) {}
}
