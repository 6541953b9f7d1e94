package org.ebbwatch.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.rack.WebhookEntry.Given;
import org.ebbwatch.rack.WebhookEntry.HeaderEntry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AlarmEntryTest {
    private static final String RACK =
            """
            boards:
              - name: left
                port: COM3
            """;

    private static final String ALARMS =
            """
            alarms:
              night:
                from: "21:30"
                to: "06:15"
              webhook:
                url: https://alarms.example/hook
                headers:
                  - name: Authorization
                    valueEnvironment: HOOK_AUTHORIZATION
                  - name: X-Rack
                    value: shed
            """;

    private static AlarmEntry parse(String alarms) throws RackFileFaulty {
        return RackFile.parse(alarms + RACK, "rack.yaml", Path.of("/srv")).alarms();
    }

    private static List<String> faults(String alarms) {
        return catchThrowableOfType(RackFileFaulty.class, () -> parse(alarms)).faults();
    }

    private static Given text(String text) {
        return new Given(Optional.of(text), Optional.empty());
    }

    private static Given environment(String name) {
        return new Given(Optional.empty(), Optional.of(name));
    }

    @Test
    void night_and_webhook_are_read_as_they_stand() throws RackFileFaulty {
        assertThat(parse(ALARMS))
                .isEqualTo(new AlarmEntry(
                        LocalTime.of(21, 30),
                        LocalTime.of(6, 15),
                        Optional.of(new WebhookEntry(
                                text("https://alarms.example/hook"),
                                List.of(
                                        new HeaderEntry("Authorization", environment("HOOK_AUTHORIZATION")),
                                        new HeaderEntry("X-Rack", text("shed")))))));
    }

    @Test
    void what_is_left_out_has_the_usual_value() throws RackFileFaulty {
        var usual = new AlarmEntry(LocalTime.of(22, 0), LocalTime.of(7, 0), Optional.empty());
        assertThat(parse("")).isEqualTo(usual);
        assertThat(parse("alarms:\n  night:\n    to: \"07:00\"\n")).isEqualTo(usual);
    }

    @Test
    void an_address_may_be_kept_in_the_environment() throws RackFileFaulty {
        assertThat(parse("alarms:\n  webhook:\n    urlEnvironment: HOOK_URL\n")
                        .webhook()
                        .orElseThrow()
                        .url())
                .isEqualTo(environment("HOOK_URL"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "from: \"21:30\" | from: \"25:30\" | rack.yaml:3: from \"25:30\" is not allowed; from is a local time from 00:00 to 23:59, in quotes",
                "from: \"21:30\" | from: \"9:30\" | rack.yaml:3: from \"9:30\" is not allowed; from is a local time from 00:00 to 23:59, in quotes",
                "url: https://alarms.example/hook | url: alarms.example | rack.yaml:6: the address of a webhook begins with http:// or https:// and a host",
                "url: https://alarms.example/hook | headers2: [] | rack.yaml:6: headers2 is not a key of webhook; did you mean headers? Its keys are url, urlEnvironment, headers",
                "valueEnvironment: HOOK_AUTHORIZATION | valueEnvironment: Bearer 12 | rack.yaml:9: valueEnvironment is a name of letters, digits and underscores, not a value",
                "valueEnvironment: HOOK_AUTHORIZATION | '' | rack.yaml:8: give value, or with valueEnvironment the name of the environment variable that holds it",
                "name: X-Rack | name: Host | rack.yaml:10: header Host is set by the service itself",
                "value: shed | '{value: shed, valueEnvironment: SHED}' | rack.yaml:10: give value, or with valueEnvironment the name of the environment variable that holds it, not both",
            })
    void a_fault_is_told_with_its_line_and_what_is_allowed(String line, String faulty, String told) {
        assertThat(ALARMS).contains(line);
        String text = faulty.startsWith("{")
                ? ALARMS.replace(line, "value: shed\n        valueEnvironment: SHED")
                : ALARMS.replace(line, faulty);
        assertThat(faults(text)).contains(told);
    }

    @Test
    void a_secret_given_as_a_name_is_not_repeated() {
        assertThat(faults(
                        ALARMS.replace("HOOK_AUTHORIZATION", "Bearer hush").replace("https://alarms.example", "hush")))
                .hasSize(2)
                .allSatisfy(fault -> assertThat(fault).doesNotContain("hush"));
    }
}
