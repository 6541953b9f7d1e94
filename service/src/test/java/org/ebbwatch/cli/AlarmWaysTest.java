package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.rack.AlarmEntry;
import org.ebbwatch.rack.WebhookEntry;
import org.ebbwatch.rack.WebhookEntry.Given;
import org.ebbwatch.rack.WebhookEntry.HeaderEntry;
import org.junit.jupiter.api.Test;

class AlarmWaysTest {
    private static final LocalTime TEN = LocalTime.of(22, 0);

    private static AlarmEntry entry(Given url, Given header) {
        return new AlarmEntry(
                TEN, TEN, Optional.of(new WebhookEntry(url, List.of(new HeaderEntry("Authorization", header)))));
    }

    private static Given text(String text) {
        return new Given(Optional.of(text), Optional.empty());
    }

    private static Given environment(String name) {
        return new Given(Optional.empty(), Optional.of(name));
    }

    @Test
    void without_a_webhook_nothing_leaves() throws Refusal {
        assertThat(AlarmWays.outlets(new AlarmEntry(TEN, TEN, Optional.empty()), Map.of()))
                .isEmpty();
    }

    @Test
    void address_and_secrets_are_taken_from_the_environment() throws Refusal {
        assertThat(AlarmWays.outlets(
                        entry(environment("HOOK_URL"), environment("HOOK_AUTHORIZATION")),
                        Map.of("HOOK_URL", "https://alarms.example/x", "HOOK_AUTHORIZATION", "Bearer hush")))
                .extracting(Outlet::name)
                .containsExactly("webhook");
    }

    @Test
    void a_secret_that_is_missing_is_named_and_the_service_does_not_start_without_it() {
        assertThatThrownBy(() -> AlarmWays.outlets(
                        entry(text("https://alarms.example/x"), environment("HOOK_AUTHORIZATION")), Map.of()))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("HOOK_AUTHORIZATION");
    }

    @Test
    void a_secret_that_cannot_be_used_is_not_shown() {
        assertThatThrownBy(() -> AlarmWays.outlets(
                        entry(environment("HOOK_URL"), environment("HOOK_AUTHORIZATION")),
                        Map.of("HOOK_URL", "https://alarms.example/x", "HOOK_AUTHORIZATION", "hush\n")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Authorization")
                .hasMessageNotContaining("hush");
        assertThatThrownBy(
                        () -> AlarmWays.outlets(entry(environment("HOOK_URL"), text("x")), Map.of("HOOK_URL", "hush")))
                .isInstanceOf(Refusal.class)
                .hasMessageNotContaining("hush");
    }
}
