package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.Set;
import org.ebbwatch.judge.Outcome.Wish;

/**
 * Something a passage waits for a person to do.
 *
 * @param wish its name
 * @param words what to do, in one sentence
 */
@Serdeable
public record WaitsFor(Wish wish, String words) {

    static List<WaitsFor> of(Set<Wish> standing) {
        return standing.stream()
                .filter(WaitsFor::isForAPerson)
                .sorted()
                .map(wish -> new WaitsFor(wish, words(wish)))
                .toList();
    }

    static boolean isForAPerson(Wish wish) {
        return !words(wish).isEmpty();
    }

    /** Empty for what the service does itself. */
    private static String words(Wish wish) {
        return switch (wish) {
            case ASK_PUT_ON -> "Put the load on.";
            case ASK_TAKE_OFF -> "Take the load off, so that it can rest.";
            case ASK_TIE_OFF -> "Bond the leads. If they spark, say so: it is not empty.";
            case ASK_PART -> "Part the bond for the last measurement.";
            case ASK_RELEASE -> "Release the cell, or leave it here.";
            case ASK_METER -> "Measure at the terminals with a meter and enter what it says.";
            case CLOSE_LOAD, OPEN_LOAD, CHECK_LEAD, OPEN_STRING -> "";
        };
    }
}
