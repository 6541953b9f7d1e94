package org.ebbwatch.web.metrics;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.json.tree.JsonNode;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import java.util.List;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.web.Asked;
import org.ebbwatch.web.InventedRack;
import org.ebbwatch.web.InventedWorkshop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class RackHealthTest {
    @Inject
    private EmbeddedServer server;

    @Inject
    private InventedRack rack;

    @Test
    void one_board_with_a_connection_is_enough_and_each_board_is_told() {
        rack.show(InventedWorkshop.mixed());

        Asked answer = Asked.get(server, "/health/readiness");

        assertThat(answer.status()).isEqualTo(200);
        JsonNode boards = answer.json().get("details").get("rack").get("details");
        assertThat(boards.get("bench").get("link").getStringValue()).isEqualTo("CONNECTED");
        assertThat(boards.get("bench").get("ageSeconds").getDoubleValue()).isEqualTo(0.4);
        assertThat(boards.get("shed").get("link").getStringValue()).isEqualTo("LOST");
        assertThat(boards.get("shed").get("stale").getBooleanValue()).isTrue();
        assertThat(boards.get("shed").get("detail").getStringValue()).contains("Plug the cable in");
    }

    @ParameterizedTest
    @EnumSource(
            value = LinkState.class,
            names = {"WAITING", "REFUSED", "LOST"})
    void without_any_connection_it_is_not_ready(LinkState state) {
        rack.show(InventedWorkshop.linked(state));

        Asked answer = Asked.get(server, "/health/readiness");

        assertThat(answer.status()).isEqualTo(503);
        assertThat(answer.json().get("details").get("rack").get("status").getStringValue())
                .isEqualTo("DOWN");
    }

    @Test
    void a_rack_without_boards_watches_nothing_and_is_not_ready() {
        rack.show(new RackView(List.of(), List.of(), List.of()));

        assertThat(Asked.get(server, "/health/readiness").status()).isEqualTo(503);
        assertThat(Asked.get(server, "/health").status()).isEqualTo(503);
    }

    @Test
    void a_rack_that_cannot_be_looked_at_is_not_ready() {
        rack.breakDown();

        Asked answer = Asked.get(server, "/health/readiness");

        assertThat(answer.status()).isEqualTo(503);
        assertThat(answer.body()).doesNotContain("secret").doesNotContain("Exception");
    }

    @Test
    void it_is_alive_whatever_the_boards_do() {
        rack.show(InventedWorkshop.linked(LinkState.LOST));

        Asked answer = Asked.get(server, "/health/liveness");

        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.json().get("status").getStringValue()).isEqualTo("UP");
    }
}
