package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.AlarmWay;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.rack.RackFile;
import org.ebbwatch.rack.RackFileFaulty;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AlarmWaysTest {
    private static final String HOOK =
            """
            alarms:
              outlets:
                - webhook:
                    urlEnvironment: HOOK_URL
                    signingSecretFile: hook.secret
                    headers:
                      - name: Authorization
                        valueEnvironment: HOOK_AUTHORIZATION
            boards:
              - name: left
                port: COM3
            """;
    private static final Map<String, String> ENVIRONMENT =
            Map.of("HOOK_URL", "https://alarms.example/x", "HOOK_AUTHORIZATION", "Bearer hush");

    @TempDir
    Path folder;

    private List<AlarmWay> ways(String rack, Map<String, String> environment) throws Refusal, RackFileFaulty {
        return new AlarmWays(environment, new SystemHostClock())
                .of(RackFile.parse(rack, "rack.yaml", folder).alarms());
    }

    private void secret(String text) throws IOException {
        Files.writeString(folder.resolve("hook.secret"), text);
    }

    @Test
    void without_outlets_nothing_leaves() throws Exception {
        assertThat(ways("boards:\n  - {name: left, port: COM3}\n", Map.of())).isEmpty();
    }

    @Test
    void address_and_secrets_are_taken_from_the_environment_and_from_files() throws Exception {
        secret("a secret of both sides\n");
        assertThat(ways(HOOK, ENVIRONMENT))
                .extracting(way -> way.outlet().name() + ' ' + way.route())
                .containsExactly("webhook " + Route.ALL);
    }

    @Test
    void what_an_outlet_is_used_for_becomes_its_route() throws Exception {
        secret("a secret of both sides");
        AlarmWay way = ways(
                        HOOK.replace("- webhook:", "- from: danger\n      escalateAfterMinutes: 10\n      webhook:"),
                        ENVIRONMENT)
                .get(0);

        assertThat(way.route())
                .isEqualTo(new Route(Urgency.DANGER, Optional.empty(), Optional.of(Duration.ofMinutes(10))));
    }

    @Test
    void a_secret_that_is_missing_is_named_and_the_service_does_not_start_without_it() throws IOException {
        assertThatThrownBy(() -> ways(HOOK, ENVIRONMENT))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("hook.secret");
        secret("a secret of both sides");
        assertThatThrownBy(() -> ways(HOOK, Map.of("HOOK_URL", "https://alarms.example/x")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("HOOK_AUTHORIZATION");
        secret("\n");
        assertThatThrownBy(() -> ways(HOOK, ENVIRONMENT))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is empty");
    }

    @Test
    void a_secret_that_cannot_be_used_is_not_shown() throws IOException {
        secret("hush");
        assertThatThrownBy(() -> ways(HOOK, ENVIRONMENT))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("signing secret")
                .hasMessageNotContaining("hush");
        secret("a secret of both sides");
        assertThatThrownBy(() ->
                        ways(HOOK, Map.of("HOOK_URL", "https://alarms.example/x", "HOOK_AUTHORIZATION", "hush\n")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Authorization")
                .hasMessageNotContaining("hush");
        assertThatThrownBy(() -> ways(HOOK, Map.of("HOOK_URL", "hush", "HOOK_AUTHORIZATION", "Bearer x")))
                .isInstanceOf(Refusal.class)
                .hasMessageNotContaining("hush");
    }

    @Test
    void certificates_that_are_none_are_refused() throws IOException {
        secret("a secret of both sides");
        Files.writeString(folder.resolve("own.pem"), "nothing");
        assertThatThrownBy(() ->
                        ways(HOOK.replace("    headers:", "    certificates: own.pem\n        headers:"), ENVIRONMENT))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("own.pem");
    }
}
