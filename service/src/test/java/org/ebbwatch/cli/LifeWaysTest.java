package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.URI;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.life.LifeReceiver;
import org.ebbwatch.rack.LifeEntry;
import org.junit.jupiter.api.Test;

class LifeWaysTest {
    private static final LifeEntry OF_FILE =
            new LifeEntry(Optional.of("https://life.example/x"), Optional.empty(), false, 5);
    private static final LifeEntry OF_ENVIRONMENT = new LifeEntry(Optional.empty(), Optional.of("LIFE_URL"), true, 1);

    @Test
    void the_address_stands_in_the_file_or_in_the_environment() throws Refusal {
        assertThat(LifeWays.receiver(OF_FILE, Map.of()))
                .isEqualTo(new LifeReceiver(URI.create("https://life.example/x"), false, Duration.ofMinutes(5)));
        assertThat(LifeWays.receiver(OF_ENVIRONMENT, Map.of("LIFE_URL", "https://life.example/y")))
                .isEqualTo(new LifeReceiver(URI.create("https://life.example/y"), true, Duration.ofMinutes(1)));
    }

    @Test
    void one_that_is_missing_is_named_and_one_that_cannot_be_used_is_not_shown() {
        assertThatThrownBy(() -> LifeWays.receiver(OF_ENVIRONMENT, Map.of()))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("LIFE_URL");
        assertThatThrownBy(() -> LifeWays.receiver(OF_ENVIRONMENT, Map.of("LIFE_URL", "hush")))
                .isInstanceOf(Refusal.class)
                .hasMessageNotContaining("hush");
    }
}
