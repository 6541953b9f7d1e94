package org.ebbwatch.web;

import io.swagger.v3.oas.annotations.OpenAPIDefinition;
import io.swagger.v3.oas.annotations.info.Info;

/** The head of the generated description. */
@OpenAPIDefinition(
        info =
                @Info(
                        title = "Ebbwatch",
                        version = "1",
                        description =
                                "The rack at this moment, for reading only. Units stand in the names: volts, celsius,"
                                        + " kelvin, amperes, millis. eventMillis are milliseconds on the board's own"
                                        + " line of event time and are judged by; times ending in At are RFC 3339 in"
                                        + " UTC and are labels. What cannot be believed is null. Errors are problem"
                                        + " details (RFC 9457)."))
final class Description {
    private Description() {}
}
