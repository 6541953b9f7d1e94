package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.UUID;
import org.ebbwatch.evening.rule.Matter;
import org.ebbwatch.evening.rule.Point;
import org.ebbwatch.evening.rule.Proof;

/**
 * One thing an evening check was to prove.
 *
 * @param matter what it is about
 * @param about the cell's tag, the board, the outlet or the alarm; empty where it is about the rack
 * @param passageId the cell's; null where it is about none
 * @param proof what came of it
 * @param expected what had to be so
 * @param seen what was so
 * @param toDo what to do about it; empty where nothing is to be done
 */
@Serdeable
public record EveningPoint(
        Matter matter, String about, @Nullable UUID passageId, Proof proof, String expected, String seen, String toDo) {

    static EveningPoint of(Point point) {
        return new EveningPoint(
                point.matter(),
                point.about(),
                point.passage().orElse(null),
                point.proof(),
                point.expected(),
                point.seen(),
                point.toDo());
    }
}
