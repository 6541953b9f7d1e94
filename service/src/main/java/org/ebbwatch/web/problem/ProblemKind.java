package org.ebbwatch.web.problem;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.HttpStatus;
import java.util.Locale;

/** Every kind of problem this interface reports, with what it means and what to do about it. */
public enum ProblemKind {
    BAD_PARAMETER(
            HttpStatus.BAD_REQUEST,
            "A parameter cannot be used",
            "Correct the parameter that the detail names; /api/v1/openapi.yml says what each takes."),
    UNKNOWN_PASSAGE(
            HttpStatus.NOT_FOUND,
            "There is no such passage",
            "Ask /api/v1/passages for the passages there are, and /api/v1/passages/closed for those that are over; in full those"
                    + " are told until the service starts again."),
    UNKNOWN_ALARM(
            HttpStatus.NOT_FOUND,
            "There is no such alarm, or it is over",
            "Ask /api/v1/alarms for the alarms that are alive."),
    UNKNOWN_CHECK(
            HttpStatus.NOT_FOUND, "There is no such evening check", "Ask /api/v1/evening-checks for the last ones."),
    UNKNOWN_CARD(
            HttpStatus.NOT_FOUND,
            "There is no such card, or it has no photo",
            "Ask /api/v1/intakes for the cards there are."),
    UNKNOWN_CALIBRATION(
            HttpStatus.NOT_FOUND,
            "There is no such calibration, or it is over",
            "Ask /api/v1/calibrations for the one under way and those that were kept."),
    UNKNOWN_PATH(HttpStatus.NOT_FOUND, "There is nothing here", "Ask /api/v1/openapi.yml for the paths there are."),
    WRONG_METHOD(
            HttpStatus.METHOD_NOT_ALLOWED,
            "This method cannot be used here",
            "Use one of the methods that the header Allow names; /api/v1/openapi.yml says what each does."),
    NOT_ACCEPTABLE(
            HttpStatus.NOT_ACCEPTABLE,
            "None of the accepted forms can be given",
            "Accept application/json, or application/yaml for /api/v1/openapi.yml."),
    NO_TOKEN(
            HttpStatus.UNAUTHORIZED,
            "Who acts has to show the operator's token",
            "Send it as Authorization: Bearer TOKEN. It was shown when the service first started; `ebbwatch token --storage"
                    + " DIR` makes a new one."),
    FOREIGN_HOST(
            HttpStatus.FORBIDDEN,
            "Nobody acts here under that name",
            "Use the address the service listens on, or add the name to http: names in the rack file."),
    NO_CONDITION(
            HttpStatus.PRECONDITION_REQUIRED,
            "Say what you saw before you act",
            "Ask for the passage or the alarm, look at it, and send the value of its header ETag as If-Match."),
    CHANGED_SINCE(
            HttpStatus.PRECONDITION_FAILED,
            "It has changed since you looked",
            "Nothing was done. Ask for it again, look at it, and decide anew."),
    NO_KEY(
            HttpStatus.BAD_REQUEST,
            "The request has no key of its own",
            "Send Idempotency-Key: 8 to 200 printable characters that no other request has, the same at every repetition."),
    KEY_USED(
            HttpStatus.UNPROCESSABLE_ENTITY,
            "The key belongs to another request",
            "Nothing was done. Make a new key for each request; repeat one only with the request it was made for."),
    MALFORMED_BODY(
            HttpStatus.BAD_REQUEST,
            "The body cannot be read",
            "Send one JSON object as /api/v1/openapi.yml describes it."),
    BAD_BODY(
            HttpStatus.UNPROCESSABLE_ENTITY,
            "Something in the body cannot be used",
            "Nothing was done. Correct what the detail names; /api/v1/openapi.yml says what each field takes."),
    NOT_NOW(HttpStatus.CONFLICT, "This is not allowed now", "Nothing was done. allowed says what can be done instead."),
    CHECK_RUNS(
            HttpStatus.CONFLICT,
            "Another evening check runs",
            "Nothing was done. Go on with that one, or end it by the step FINISHED."),
    CHECK_OVER(HttpStatus.CONFLICT, "This evening check is over", "Nothing was done. Start another one."),
    NOT_ADMITTED(
            HttpStatus.CONFLICT,
            "Its card keeps the cell off the rack",
            "Nothing was done. /api/v1/intakes/TAG tells the card; docs/check-in.md tells the rules."),
    CALIBRATION_RUNS(
            HttpStatus.CONFLICT,
            "Another calibration runs",
            "Nothing was done. Go on with that one, or give it up by the step GIVEN_UP."),
    NOT_READY(
            HttpStatus.CONFLICT,
            "The calibration is not ready for this",
            "Nothing was done. Do first what the detail names, then ask again."),
    NO_SENSE(
            HttpStatus.UNPROCESSABLE_ENTITY,
            "The calibration cannot be right like this",
            "Nothing was taken. Look at what the detail names, then take the point again. Short leads, never a cell."),
    TAKEN(
            HttpStatus.CONFLICT,
            "Another passage is in the way",
            "Nothing was done. End that passage first, or take another channel or tag."),
    TAG_TAKEN(
            HttpStatus.CONFLICT,
            "Another card has this tag",
            "Nothing was written. Give the cell another tag, or leave it out to get the next free one."),
    STAYS_OUT(
            HttpStatus.CONFLICT,
            "What was seen torn, leaking or smelling stays off the rack",
            "Nothing was written. If that was a slip of the pen take the cell in anew under another tag."),
    RECORDS_AWAY(
            HttpStatus.SERVICE_UNAVAILABLE,
            "The records cannot be written now",
            "Nothing was written. Write it on paper, look after the disk, and ask again."),
    UNABLE(
            HttpStatus.CONFLICT,
            "The board cannot do this",
            "Nothing was done. /api/v1/boards says how the board is connected."),
    BAD_PHOTO(
            HttpStatus.UNPROCESSABLE_ENTITY,
            "The photo cannot be kept",
            "Nothing was written. Send a JPEG or a PNG of at most 6 MiB."),
    TOO_LARGE(
            HttpStatus.REQUEST_ENTITY_TOO_LARGE,
            "The body is too large",
            "Nothing was done. A JSON body has at most 64 KiB, a photo 6 MiB."),
    NO_LOAD(
            HttpStatus.UNPROCESSABLE_ENTITY,
            "No load is named for this",
            "Nothing was changed. Correct the wish as the detail says; docs/sizing.md tells every rule."),
    TOO_MANY_LISTENERS(
            HttpStatus.SERVICE_UNAVAILABLE,
            "Too many are listening",
            "Close a page that listens, or ask again later; until then ask /api/v1/rack."),
    FAULT(
            HttpStatus.INTERNAL_SERVER_ERROR,
            "The service failed at this",
            "Go and look at the rack itself; do not wait for this page. Then look into the service's log.");

    private static final String BASE = "/api/v1/problems/";

    private final HttpStatus status;
    private final String title;
    private final String advice;

    ProblemKind(HttpStatus status, String title, String advice) {
        this.status = status;
        this.title = title;
        this.advice = advice;
    }

    HttpStatus status() {
        return status;
    }

    String title() {
        return title;
    }

    /** What to do. */
    String advice() {
        return advice;
    }

    /** Its name in a path. */
    String slug() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** A URI reference that can be followed. */
    String type() {
        return BASE + slug();
    }

    /** What a status without further words means; null where it has no kind of its own. */
    @Nullable static ProblemKind of(HttpStatus status) {
        return switch (status) {
            case BAD_REQUEST -> BAD_PARAMETER;
            case NOT_FOUND -> UNKNOWN_PATH;
            case METHOD_NOT_ALLOWED -> WRONG_METHOD;
            case NOT_ACCEPTABLE -> NOT_ACCEPTABLE;
            case REQUEST_ENTITY_TOO_LARGE -> TOO_LARGE;
            default -> status.getCode() >= 500 ? FAULT : null;
        };
    }
}
