package org.ebbwatch.store;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * An evening check as it is written down.
 *
 * @param key of the request that began it
 * @param startedBy who asked for it
 * @param endedWallMillis empty while it runs
 * @param verdict empty while it runs
 * @param passages that it covers
 * @param body its points
 */
public record EveningRow(
        UUID id,
        String key,
        String startedBy,
        WallLabel started,
        OptionalLong endedWallMillis,
        Optional<String> verdict,
        List<UUID> passages,
        String body) {
    public EveningRow {
        requireNonNull(id);
        requireNonNull(key);
        requireNonNull(startedBy);
        requireNonNull(started);
        requireNonNull(endedWallMillis);
        requireNonNull(verdict);
        requireNonNull(body);
        passages = List.copyOf(passages);
    }
}
