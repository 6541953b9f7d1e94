package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.ApplicationContext;
import io.micronaut.context.env.Environment;
import io.micronaut.http.server.HttpServerConfiguration;
import io.micronaut.runtime.server.EmbeddedServer;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

class StartTest {

    @Test
    void the_service_starts_without_a_datasource() {
        Map<String, Object> rack = Map.of("invented.rack", "yes");
        try (EmbeddedServer server = ApplicationContext.run(EmbeddedServer.class, rack, Environment.TEST)) {
            assertThat(server.isRunning()).isTrue();
            assertThat(server.getApplicationContext().containsBean(DataSource.class))
                    .isFalse();
            assertThat(Asked.get(server, "/api/v1/rack").status()).isEqualTo(200);
        }
    }

    @Test
    void by_default_it_listens_to_this_machine_alone() {
        try (ApplicationContext context =
                ApplicationContext.builder().deduceEnvironment(false).start()) {
            HttpServerConfiguration http = context.getBean(HttpServerConfiguration.class);

            assertThat(http.getHost()).contains("127.0.0.1");
            assertThat(http.getPort()).contains(8471);
        }
    }

    @Test
    void host_and_port_can_be_given() {
        Map<String, Object> given = Map.of("ebbwatch.http.host", "0.0.0.0", "ebbwatch.http.port", 9000);
        try (ApplicationContext context = ApplicationContext.builder()
                .deduceEnvironment(false)
                .properties(given)
                .start()) {
            HttpServerConfiguration http = context.getBean(HttpServerConfiguration.class);

            assertThat(http.getHost()).contains("0.0.0.0");
            assertThat(http.getPort()).contains(9000);
        }
    }

    @Test
    void the_frameworks_own_name_of_the_port_works_as_well() {
        try (ApplicationContext context = ApplicationContext.builder()
                .deduceEnvironment(false)
                .properties(Map.of("micronaut.server.port", 9001))
                .start()) {
            assertThat(context.getBean(HttpServerConfiguration.class).getPort()).contains(9001);
        }
    }
}
