package org.ebbwatch.web;

import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.Produces;
import io.swagger.v3.oas.annotations.Hidden;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** Serves the description of this interface that the build made. */
@Controller("/api/v1/openapi.yml")
@Hidden
class DescriptionRoute {
    static final String RESOURCE = "/META-INF/swagger/ebbwatch-v1.yml";

    @Get
    @Produces("application/yaml")
    byte[] description() {
        try (InputStream description = DescriptionRoute.class.getResourceAsStream(RESOURCE)) {
            if (description == null) {
                throw new IllegalStateException("this build has no " + RESOURCE);
            }
            return description.readAllBytes();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
