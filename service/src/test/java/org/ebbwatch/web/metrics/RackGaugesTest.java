package org.ebbwatch.web.metrics;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import java.util.List;
import org.ebbwatch.web.Asked;
import org.ebbwatch.web.InventedRack;
import org.ebbwatch.web.InventedWorkshop;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class RackGaugesTest {
    @Inject
    private EmbeddedServer server;

    @Inject
    private InventedRack rack;

    @BeforeEach
    void a_night_with_a_bit_of_everything() {
        rack.show(InventedWorkshop.mixed());
    }

    @Test
    void readings_are_gauges_by_board_and_channel() {
        assertThat(scrape())
                .contains(
                        "ebbwatch_volts{board=\"bench\",channel=\"0\"} 3.4118",
                        "ebbwatch_celsius{board=\"bench\",channel=\"8\"} 21.4",
                        "ebbwatch_load_applied{board=\"bench\",channel=\"1\"} 1.0",
                        "ebbwatch_load_applied{board=\"bench\",channel=\"2\"} 0.0",
                        "ebbwatch_volts{board=\"bench\",channel=\"7\"} NaN");
    }

    @Test
    void readings_of_a_stale_board_are_not_shown_as_if_they_were_new() {
        assertThat(scrape())
                .contains(
                        "ebbwatch_volts{board=\"shed\",channel=\"0\"} NaN",
                        "ebbwatch_celsius{board=\"shed\",channel=\"0\"} NaN",
                        "ebbwatch_load_applied{board=\"shed\",channel=\"0\"} NaN",
                        "ebbwatch_board_connected{board=\"shed\"} 0.0",
                        "ebbwatch_board_connected{board=\"bench\"} 1.0",
                        "ebbwatch_scan_age_seconds{board=\"shed\"} 605.4");
    }

    @Test
    void passages_are_counted_by_phase_and_findings_by_kind_nought_included() {
        assertThat(scrape())
                .contains(
                        "ebbwatch_passages{phase=\"DRAIN\"} 4.0",
                        "ebbwatch_passages{phase=\"RELEASED\"} 1.0",
                        "ebbwatch_passages{phase=\"CHECK_IN\"} 0.0",
                        "ebbwatch_findings{kind=\"SILENT\"} 2.0",
                        "ebbwatch_findings{kind=\"HOT\"} 0.0");
    }

    @Test
    void a_scrape_shows_the_rack_as_it_is_then_and_forgets_what_is_gone() {
        scrape();
        rack.show(InventedWorkshop.quiet());

        assertThat(scrape())
                .contains("ebbwatch_passages{phase=\"HELD\"} 0.0", "ebbwatch_findings{kind=\"SILENT\"} 0.0")
                .noneMatch(line -> line.contains("shed"));
    }

    @Test
    void a_gauge_keeps_its_number_when_memory_is_cleared() {
        scrape();
        System.gc();

        assertThat(scrape()).contains("ebbwatch_volts{board=\"bench\",channel=\"0\"} 3.4118");
    }

    @Test
    void neither_a_passage_nor_a_tag_is_ever_a_label() {
        assertThat(scrape())
                .noneMatch(line -> line.contains("torch-2") || line.contains("vacuum-6"))
                .noneMatch(line -> line.contains(InventedWorkshop.id(1).toString()));
    }

    @Test
    void the_service_itself_is_measured_too() {
        assertThat(scrape()).anyMatch(line -> line.startsWith("jvm_memory_used_bytes"));
    }

    @Test
    void a_scrape_fails_when_the_rack_cannot_be_looked_at() {
        rack.breakDown();

        assertThat(Asked.get(server, "/prometheus").status()).isEqualTo(500);
    }

    private List<String> scrape() {
        Asked answer = Asked.get(server, "/prometheus");
        assertThat(answer.status()).isEqualTo(200);
        return answer.body().lines().toList();
    }
}
