package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import org.ebbwatch.evening.EveningCheck;

/**
 * The last evening checks.
 *
 * @param checks newest first
 */
@Serdeable
public record EveningChecksAnswer(List<EveningCheckAnswer> checks) {

    public static EveningChecksAnswer of(List<EveningCheck> checks) {
        return new EveningChecksAnswer(
                checks.stream().map(EveningCheckAnswer::of).toList());
    }
}
