package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.stream.IntStream;
import org.ebbwatch.acquire.LinkQuality;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.passage.RackView.BoardView;

/**
 * One board.
 *
 * @param name its name on this rack
 * @param link how it stands between the service and the board
 * @param detail what is the matter with the link, and what to do about it; may be empty
 * @param serialNumber empty until the board has said who it is
 * @param simulated whether its readings come from a simulator, not from cells
 * @param speed how many times faster than life a simulated board runs; 1 for a real one
 * @param eventMillis event time of its last scan; null before the first
 * @param lastScanAt when that scan arrived, RFC 3339 in UTC; null before the first
 * @param ageSeconds host time since then, in seconds; null before the first
 * @param stale whether nothing shown of this board may be taken for the present
 * @param ambientCelsius its ambient sensor; null where there is none to believe
 * @param contactsClosed contact inputs that are closed, from 0
 * @param line how good the line to it has been; null where there is nothing to measure
 */
@Serdeable
public record BoardAnswer(
        String name,
        LinkState link,
        String detail,
        String serialNumber,
        boolean simulated,
        int speed,
        @Nullable Long eventMillis,
        @Nullable String lastScanAt,
        @Nullable Double ageSeconds,
        boolean stale,
        @Nullable Double ambientCelsius,
        List<Integer> contactsClosed,
        @Nullable LinkAnswer line) {

    static BoardAnswer of(BoardView board, Freshness freshness, double ambientCelsius, @Nullable LinkQuality quality) {
        boolean heard = board.eventMillis() >= 0;
        return new BoardAnswer(
                board.name(),
                board.link(),
                board.detail(),
                board.serialNumber(),
                board.simulatedSpeed() > 0,
                Math.max(1, board.simulatedSpeed()),
                heard ? board.eventMillis() : null,
                heard ? Figures.wallTime(board.wallMillis()) : null,
                Figures.coarse(freshness.ageSeconds(board)),
                freshness.isStale(board),
                Figures.coarse(ambientCelsius),
                IntStream.range(0, Integer.SIZE)
                        .filter(input -> (board.contacts() >>> input & 1) != 0)
                        .boxed()
                        .toList(),
                LinkAnswer.of(quality));
    }
}
