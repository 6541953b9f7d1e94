package org.ebbwatch.store;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.UUID;

/**
 * A calibration as it is stored.
 *
 * @param serialNumber of the board
 * @param channel from 0
 * @param body all of it, as text
 * @param withdrawal empty while it holds
 */
public record CalibrationRow(
        UUID id, String serialNumber, int channel, WallLabel made, String body, Optional<Withdrawal> withdrawal) {
    public CalibrationRow {
        requireNonNull(id);
        requireNonNull(serialNumber);
        requireNonNull(made);
        requireNonNull(body);
        requireNonNull(withdrawal);
    }

    /** It was found wrong. */
    public record Withdrawal(long wallMillis, String by, String reason) {
        public Withdrawal {
            requireNonNull(by);
            requireNonNull(reason);
        }
    }
}
