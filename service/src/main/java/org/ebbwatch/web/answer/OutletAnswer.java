package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import org.ebbwatch.alarm.outlet.OutletView;

/**
 * How a way out does.
 *
 * @param name of the outlet
 * @param pending messages that have not reached their receiver
 * @param unwanted those of them the receiver refused for what they hold; they are tried again behind the others
 * @param failures attempts that failed since the last success
 * @param lastError why the last attempt failed; empty if it did not
 * @param lastSuccessAt when a message last reached its receiver, RFC 3339 in UTC; null: none did since the service began
 */
@Serdeable
public record OutletAnswer(
        String name, int pending, int unwanted, int failures, String lastError, @Nullable String lastSuccessAt) {

    static OutletAnswer of(OutletView view) {
        return new OutletAnswer(
                view.name(),
                view.pending(),
                view.unwanted(),
                view.failures(),
                view.lastError(),
                Figures.wallTime(view.lastSuccessWallMillis().orElse(0)));
    }
}
