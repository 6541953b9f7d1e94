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
            HttpStatus.NOT_FOUND, "There is no such passage", "Ask /api/v1/passages for the passages there are."),
    UNKNOWN_PATH(HttpStatus.NOT_FOUND, "There is nothing here", "Ask /api/v1/openapi.yml for the paths there are."),
    WRONG_METHOD(
            HttpStatus.METHOD_NOT_ALLOWED,
            "This method cannot be used here",
            "Everything here is for reading only: use GET."),
    NOT_ACCEPTABLE(
            HttpStatus.NOT_ACCEPTABLE,
            "None of the accepted forms can be given",
            "Accept application/json, or application/yaml for /api/v1/openapi.yml."),
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
            default -> status.getCode() >= 500 ? FAULT : null;
        };
    }
}
