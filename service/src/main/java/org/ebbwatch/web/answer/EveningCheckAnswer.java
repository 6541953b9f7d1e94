package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.evening.EveningCheck;
import org.ebbwatch.evening.EveningCheck.State;
import org.ebbwatch.evening.rule.Proof;

/**
 * An evening check. That all was proven is no promise: what a check cannot see stands in docs/evening-check.md.
 *
 * @param id by which it is asked for
 * @param state RUNNING, ENDED, or BROKEN_OFF where the service ended before it did
 * @param by who asked for it
 * @param startedAt RFC 3339 in UTC
 * @param endedAt RFC 3339 in UTC; null while it runs, and where it was broken off
 * @param verdict the worst of its points
 * @param passages that it covers
 * @param points in full
 * @param awaits what is still going on, a few words each; empty once it is over
 */
@Serdeable
public record EveningCheckAnswer(
        UUID id,
        State state,
        String by,
        @Nullable String startedAt,
        @Nullable String endedAt,
        Proof verdict,
        List<UUID> passages,
        List<EveningPoint> points,
        List<String> awaits) {

    public static EveningCheckAnswer of(EveningCheck check) {
        return new EveningCheckAnswer(
                check.id(),
                check.state(),
                check.by(),
                Figures.wallTime(check.startedWallMillis()),
                Figures.wallTime(check.endedWallMillis().orElse(0)),
                check.verdict(),
                check.passages(),
                check.points().stream().map(EveningPoint::of).toList(),
                check.awaits());
    }
}
