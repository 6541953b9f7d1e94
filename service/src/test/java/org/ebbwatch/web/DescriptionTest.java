package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class DescriptionTest {
    @Inject
    private EmbeddedServer server;

    @Test
    void the_interface_is_the_one_that_was_agreed_on() throws IOException {
        assertThat(Asked.get(server, "/api/v1/openapi.yml").body())
                .as("The interface has changed. Others may rely on it. If this is meant, renew the agreed copy:%n"
                        + "  cp service/target/classes/META-INF/swagger/ebbwatch-v1.yml"
                        + " service/src/test/resources/openapi/ebbwatch-v1.yml%n"
                        + "and say in the changelog what has changed.")
                .isEqualTo(agreed());
    }

    @Test
    void it_is_served_as_yaml() {
        assertThat(Asked.get(server, "/api/v1/openapi.yml").header("Content-Type"))
                .startsWith("application/yaml");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/v1/rack:",
                "/api/v1/boards:",
                "/api/v1/channels:",
                "/api/v1/passages:",
                "/api/v1/passages/{id}:",
                "/api/v1/passages/{id}/trace:",
                "/api/v1/findings:",
                "/api/v1/passages/{id}/acts:",
                "/api/v1/passages/{id}/meter-readings:",
                "/api/v1/passages/{id}/announcements:",
                "/api/v1/passages/{id}/moves:",
                "/api/v1/passages/{id}/blinks:",
                "/api/v1/events:",
                "/api/v1/hand-over:",
                "/api/v1/backups:",
                "/api/v1/plan:",
                "/api/v1/alarms:",
                "/api/v1/evening-checks:",
                "/api/v1/evening-checks/{id}/steps:",
                "/api/v1/calibrations:",
                "/api/v1/calibrations/{id}/steps:",
                "/api/v1/alarms/rates:",
                "/api/v1/morning-report:",
                "/api/v1/sizing:",
                "/api/v1/intakes:",
                "/api/v1/intakes/{tag}:",
                "/api/v1/intakes/{tag}/amendments:",
                "/api/v1/intakes/{tag}/photo:",
                "/api/v1/problems/{name}:"
            })
    void every_route_is_described(String path) throws IOException {
        assertThat(agreed()).contains("\n  " + path + "\n");
    }

    static List<String> earlier() {
        return List.of("1-reading");
    }

    @ParameterizedTest
    @MethodSource("earlier")
    void whoever_relies_on_an_earlier_agreement_is_not_let_down(String name) throws IOException {
        assertThat(BreakingChanges.between(
                        copy("earlier/" + name),
                        Asked.get(server, "/api/v1/openapi.yml").body()))
                .isEmpty();
    }

    @Test
    void every_earlier_agreement_is_compared() throws IOException {
        try (Stream<Path> files =
                Files.list(Path.of(System.getProperty("basedir", ".")).resolve("src/test/resources/openapi/earlier"))) {
            assertThat(files.map(file -> file.getFileName().toString().replace(".yml", "")))
                    .containsExactlyInAnyOrderElementsOf(earlier());
        }
    }

    private static String agreed() throws IOException {
        return copy("ebbwatch-v1");
    }

    private static String copy(String name) throws IOException {
        try (InputStream copy = DescriptionTest.class.getResourceAsStream("/openapi/" + name + ".yml")) {
            assertThat(copy).as("the agreed copy").isNotNull();
            return new String(copy.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
