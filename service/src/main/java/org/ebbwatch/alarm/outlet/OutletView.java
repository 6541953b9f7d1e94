package org.ebbwatch.alarm.outlet;

import java.util.OptionalLong;

/**
 * How an outlet does.
 *
 * @param name of the outlet
 * @param pending messages that have not reached their receiver
 * @param unwanted those of them the receiver refused for what they hold; they are tried again behind the others
 * @param failures attempts that failed since the last success
 * @param lastError why the last attempt failed; empty if it did not
 * @param lastSuccessWallMillis when a message last reached its receiver; empty: none did since the service began
 */
public record OutletView(
        String name, int pending, int unwanted, int failures, String lastError, OptionalLong lastSuccessWallMillis) {}
