package org.ebbwatch.web.ask;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ebbwatch.passage.RackDesk;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** The two headers that guard a request: what its sender saw, and the key by which it is told from others. */
public final class Guard {
    /** The header of a request's key. */
    public static final String KEY = "Idempotency-Key";

    private static final Pattern TAG = Pattern.compile("\"([0-9]{1,18})\"");
    private static final Pattern PRINTABLE = Pattern.compile("[!-~ ]*");

    private Guard() {}

    /** The sequence in an entity tag as the header ETag of a passage or an alarm gave it (RFC 9110, 8.8.3). */
    public static long seen(String ifMatch) {
        if (ifMatch.isBlank()) {
            throw new ProblemException(ProblemKind.NO_CONDITION, "The header If-Match is missing.");
        }
        Matcher tag = TAG.matcher(ifMatch.strip());
        if (!tag.matches()) {
            throw new ProblemException(
                    ProblemKind.BAD_PARAMETER,
                    "If-Match is one number in quotes, as the header ETag of the passage or the alarm gave it.");
        }
        return Long.parseLong(tag.group(1));
    }

    /** The entity tag of a sequence. */
    public static String tag(long sequence) {
        return "\"" + sequence + '"';
    }

    /** The key of a request. */
    public static String key(String idempotencyKey) {
        String key = idempotencyKey.strip();
        if (key.length() < RackDesk.KEY_SHORTEST
                || key.length() > RackDesk.KEY_LONGEST
                || !PRINTABLE.matcher(key).matches()) {
            throw new ProblemException(
                    ProblemKind.NO_KEY,
                    key.isEmpty()
                            ? "The header Idempotency-Key is missing."
                            : "The header Idempotency-Key cannot be used.");
        }
        return key;
    }
}
