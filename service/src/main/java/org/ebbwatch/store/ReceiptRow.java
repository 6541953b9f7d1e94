package org.ebbwatch.store;

import java.util.UUID;

/**
 * What came of a request that was done.
 *
 * @param key by which whoever asked tells the request from others
 * @param requestHash SHA-256 of the request, 64 hexadecimal digits
 * @param passage whose
 * @param sequence the passage's sequence afterwards
 * @param board the board the passage was on
 * @param channel the channel it was on, from 0
 * @param phase the phase it was in
 * @param reason why
 * @param wall when
 */
public record ReceiptRow(
        String key,
        String requestHash,
        UUID passage,
        long sequence,
        String board,
        int channel,
        String phase,
        String reason,
        WallLabel wall) {}
