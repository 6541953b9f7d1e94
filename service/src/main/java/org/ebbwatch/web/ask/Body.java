package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** A body's fields, each asked for with what it may be. A field that is not known is refused: misspelt, it would be ignored. */
final class Body {
    private static final int SHOWN = 60;
    private static final Pattern UNSEEN = Pattern.compile("[\\p{C}\\p{Z}]+");

    private final Map<String, Object> fields;

    private Body(Map<String, Object> fields) {
        this.fields = fields;
    }

    /** A body that may have these fields. */
    static Body of(@Nullable String text, String... known) {
        Map<String, Object> fields = FlatJson.read(text == null ? "" : text);
        for (String given : fields.keySet()) {
            if (!List.of(known).contains(given)) {
                throw bad(
                        "There is no field \"" + shortened(given) + "\"; there are " + String.join(", ", known) + '.');
            }
        }
        return new Body(fields);
    }

    /** A number within [least, most]. */
    double number(String field, double least, double most) {
        String takes = "a number from " + plain(least) + " to " + plain(most);
        double number = needed(field, takes) instanceof Number given ? given.doubleValue() : Double.NaN;
        if (!(number >= least && number <= most)) {
            throw cannotBe(field, takes);
        }
        return number;
    }

    /** A whole number within [least, most]. */
    int whole(String field, int least, int most) {
        String takes = "a whole number from " + least + " to " + most;
        if (needed(field, takes) instanceof BigInteger given
                && given.bitLength() < Integer.SIZE
                && given.intValue() >= least
                && given.intValue() <= most) {
            return given.intValue();
        }
        throw cannotBe(field, takes);
    }

    boolean truth(String field) {
        return truthIfGiven(field).orElseThrow(() -> cannotBe(field, "true or false"));
    }

    /** Empty where the field is not given. */
    Optional<Boolean> truthIfGiven(String field) {
        if (!isGiven(field)) {
            return Optional.empty();
        }
        if (fields.get(field) instanceof Boolean given) {
            return Optional.of(given);
        }
        throw cannotBe(field, "true or false");
    }

    /** A text that {@code takes} describes and {@code fits} accepts. */
    String text(String field, String takes, Pattern fits) {
        if (needed(field, takes) instanceof String given && fits.matcher(given).matches()) {
            return given;
        }
        throw cannotBe(field, takes);
    }

    /**
     * A line of free text as it is kept: what cannot be seen is a space, spaces stand single and none at the ends.
     *
     * @param longest in characters
     */
    String line(String field, int longest) {
        String takes = "a text of 1 to " + longest + " characters";
        if (needed(field, takes) instanceof String given) {
            String line = UNSEEN.matcher(given).replaceAll(" ").strip();
            if (!line.isEmpty() && line.length() <= longest) {
                return line;
            }
        }
        throw cannotBe(field, takes);
    }

    /** One of some choices by its name. */
    <C> C choice(String field, C[] choices, Function<C, String> name) {
        String takes = "one of " + Arrays.stream(choices).map(name).collect(Collectors.joining(", "));
        Object given = needed(field, takes);
        return Arrays.stream(choices)
                .filter(choice -> name.apply(choice).equals(given))
                .findFirst()
                .orElseThrow(() -> cannotBe(field, takes));
    }

    boolean isGiven(String field) {
        return fields.get(field) != null;
    }

    private Object needed(String field, String takes) {
        if (!isGiven(field)) {
            throw bad("The field " + field + " is missing; it takes " + takes + '.');
        }
        return fields.get(field);
    }

    private ProblemException cannotBe(String field, String takes) {
        Object given = fields.get(field);
        String shown = given instanceof String text ? '"' + shortened(text) + '"' : shortened(String.valueOf(given));
        return bad(
                isGiven(field)
                        ? field + " cannot be " + shown + "; it takes " + takes + '.'
                        : "The field " + field + " is missing; it takes " + takes + '.');
    }

    private static String shortened(String text) {
        return text.length() <= SHOWN ? text : text.substring(0, SHOWN) + "...";
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }

    static ProblemException bad(String detail) {
        return new ProblemException(ProblemKind.BAD_BODY, detail);
    }
}
