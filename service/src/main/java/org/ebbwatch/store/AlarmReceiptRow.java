package org.ebbwatch.store;

import java.util.UUID;

/**
 * What came of a request about an alarm that was done.
 *
 * @param key by which whoever asked tells the request from others
 * @param requestHash SHA-256 of the request, 64 hexadecimal digits
 * @param alarm which
 * @param sequence how many steps it had made afterwards
 * @param kind what the alarm is about
 * @param step what was asked for
 * @param state where the alarm was afterwards
 * @param cover what covered it afterwards
 * @param who asked
 * @param wall when
 */
public record AlarmReceiptRow(
        String key,
        String requestHash,
        UUID alarm,
        long sequence,
        String kind,
        String step,
        String state,
        String cover,
        String who,
        WallLabel wall) {}
