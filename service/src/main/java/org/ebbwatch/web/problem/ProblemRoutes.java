package org.ebbwatch.web.problem;

import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Arrays;
import java.util.List;

/** What the types of problem details mean. */
@Controller("/api/v1/problems")
@Tag(name = "problems")
class ProblemRoutes {

    /** Every type of problem. */
    @Get
    List<Meaning> all() {
        return Arrays.stream(ProblemKind.values()).map(Meaning::of).toList();
    }

    /**
     * One type of problem.
     *
     * @param name the last part of the type
     */
    @Get("/{name}")
    Meaning one(String name) {
        return Arrays.stream(ProblemKind.values())
                .filter(kind -> kind.slug().equals(name))
                .findFirst()
                .map(Meaning::of)
                .orElseThrow(() ->
                        new ProblemException(ProblemKind.UNKNOWN_PATH, "There is no problem called \"" + name + "\"."));
    }

    /**
     * A type of problem.
     *
     * @param type what problem details carry as type
     * @param title the problem in short
     * @param status the HTTP status it comes with
     * @param advice what to do
     */
    @Serdeable
    record Meaning(String type, String title, int status, String advice) {
        static Meaning of(ProblemKind kind) {
            return new Meaning(kind.type(), kind.title(), kind.status().getCode(), kind.advice());
        }
    }
}
