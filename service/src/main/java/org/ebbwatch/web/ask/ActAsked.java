package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.judge.Act;
import org.ebbwatch.passage.DeskRequest.Do;

/**
 * Something a person did, or wants the board to do.
 *
 * @param act which
 * @param spark with TIE_OFF, and only with it: whether the leads sparked when they touched. A spark means not empty: the cell goes
 *     back on its load
 */
@Serdeable
public record ActAsked(Act act, @Nullable Boolean spark) {

    /** Reads the body. */
    public static Do read(@Nullable String text, UUID passage, long seen) {
        Body body = Body.of(text, "act", "spark");
        Act act = body.choice("act", Act.values(), Act::name);
        Optional<Boolean> spark = body.truthIfGiven("spark");
        if (act != Act.TIE_OFF && spark.isPresent()) {
            throw Body.bad("spark belongs to TIE_OFF alone, not to " + act + '.');
        }
        if (act == Act.TIE_OFF && spark.isEmpty()) {
            throw Body.bad(
                    "The field spark is missing; with TIE_OFF it says whether the leads sparked when they touched,"
                            + " true or false.");
        }
        return new Do(passage, seen, spark.orElse(false) ? Act.SPARK : act);
    }
}
