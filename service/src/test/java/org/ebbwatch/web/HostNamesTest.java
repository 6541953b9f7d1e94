package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.ApplicationContext;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HostNamesTest {

    @ParameterizedTest
    @CsvSource({
        "192.0.2.7:8471, true",
        "192.0.2.7, true",
        "192.0.2.8, false",
        "rack.example, true",
        "RACK.example.:80, true",
        "not-rack.example, false",
        "rack.example.elsewhere.example, false",
        "localhost:1, true",
        "127.0.0.53, true",
        "127.0.0.1.elsewhere.example, false",
        "[::1], true",
        "[2001:db8::7]:8471, true",
        "2001:db8::7, true",
        "[2001:db8::8], false",
        "'', false"
    })
    void ours_are_loopback_the_address_and_the_names_of_the_rack_file(String host, boolean ours) {
        Map<String, Object> given = Map.of(
                "micronaut.server.host", "192.0.2.7", "ebbwatch.http.names", List.of("Rack.Example", "2001:db8::7"));
        try (ApplicationContext context = ApplicationContext.builder()
                .deduceEnvironment(false)
                .properties(given)
                .start()) {
            assertThat(context.getBean(HostNames.class).isOurs(host)).isEqualTo(ours);
        }
    }

    @ParameterizedTest
    @CsvSource({"elsewhere.example, false", "192.0.2.7, false", "localhost, true"})
    void a_service_that_listens_everywhere_is_acted_on_by_loopback_alone_unless_names_are_given(
            String host, boolean ours) {
        try (ApplicationContext context = ApplicationContext.builder()
                .deduceEnvironment(false)
                .properties(Map.of("micronaut.server.host", "0.0.0.0"))
                .start()) {
            assertThat(context.getBean(HostNames.class).isOurs(host)).isEqualTo(ours);
        }
    }
}
