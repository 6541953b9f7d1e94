package org.ebbwatch.web.ask;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.media.Schema.RequiredMode;

/**
 * Who signs in.
 *
 * @param token the operator's, as it was shown
 */
@Serdeable
public record SignInAsked(@Nullable @Schema(requiredMode = RequiredMode.REQUIRED, maxLength = 200) String token) {
    private static final int LONGEST = 200;

    /** Reads the body. */
    public static SignInAsked read(@Nullable String text) {
        return new SignInAsked(Body.of(text, "token").line("token", LONGEST).strip());
    }

    /** Without the token: it must not get into a log. */
    @Override
    public String toString() {
        return "SignInAsked[token=...]";
    }
}
