package org.ebbwatch.web;

import io.swagger.v3.oas.annotations.OpenAPIDefinition;
import io.swagger.v3.oas.annotations.enums.SecuritySchemeType;
import io.swagger.v3.oas.annotations.info.Info;
import io.swagger.v3.oas.annotations.security.SecurityScheme;

/** The head of the generated description. */
@OpenAPIDefinition(
        info =
                @Info(
                        title = "Ebbwatch",
                        version = "1",
                        description =
                                "The rack at this moment, and what people do to it. Units stand in the names: volts, celsius,"
                                        + " kelvin, amperes, millis. eventMillis are milliseconds on the board's own"
                                        + " line of event time and are judged by; times ending in At are RFC 3339 in"
                                        + " UTC and are labels. What cannot be believed is null. Errors are problem"
                                        + " details (RFC 9457). Whoever acts shows the operator's token, the ETag of what"
                                        + " was seen as If-Match, and a key of the request as Idempotency-Key; the same"
                                        + " request with the same key is done once."))
@SecurityScheme(name = "operator", type = SecuritySchemeType.HTTP, scheme = "bearer")
final class Description {
    private Description() {}
}
