package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;

/**
 * The rack at one moment.
 *
 * @param at when this was said, RFC 3339 in UTC
 * @param simulated whether any board is a simulator
 * @param staleAfterSeconds a board with a last scan older than this is stale
 * @param boards every board
 * @param channels every channel with its latest reading
 * @param passages the passages that are not over, in short
 * @param released how many passages ended as emptied
 * @param withdrawn how many passages ended without a verdict
 * @param unwatched a line for each cell of the rack file that could not be checked in: nobody watches it
 */
@Serdeable
public record RackAnswer(
        @Nullable String at,
        boolean simulated,
        int staleAfterSeconds,
        List<BoardAnswer> boards,
        List<ChannelAnswer> channels,
        List<PassageShort> passages,
        long released,
        long withdrawn,
        List<String> unwatched) {}
