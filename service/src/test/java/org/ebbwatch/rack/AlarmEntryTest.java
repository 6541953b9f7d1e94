package org.ebbwatch.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.ebbwatch.alarm.outlet.WebhookSettings.Method;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.rack.OutletEntry.HoursEntry;
import org.ebbwatch.rack.WayEntry.BoardBuzzer;
import org.ebbwatch.rack.WayEntry.HeaderEntry;
import org.ebbwatch.rack.WayEntry.LoginEntry;
import org.ebbwatch.rack.WayEntry.Mail;
import org.ebbwatch.rack.WayEntry.Mqtt;
import org.ebbwatch.rack.WayEntry.Security;
import org.ebbwatch.rack.WayEntry.Webhook;
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
              publicAddress: https://rack.example
              outlets:
                - webhook:
                    url: https://alarms.example/hook
                    headers:
                      - name: Authorization
                        valueEnvironment: HOOK_AUTHORIZATION
                      - name: X-Rack
                        value: shed
                - name: Ben at work
                  from: ringing
                  hours:
                    from: "08:00"
                    to: "17:00"
                  escalateAfterMinutes: 15
                  mail:
                    host: mail.example
                    user: rack
                    passwordFile: mail.password
                    from: rack@example.org
                    to: ben@example.org
            """;

    private static AlarmEntry parse(String alarms) throws RackFileFaulty {
        return RackFile.parse(alarms + RACK, "rack.yaml", Path.of("/srv")).alarms();
    }

    private static List<String> faults(String alarms) {
        return catchThrowableOfType(RackFileFaulty.class, () -> parse(alarms)).faults();
    }

    private static Webhook webhook(Given url, HeaderEntry... headers) {
        return new Webhook(
                url,
                Method.POST,
                List.of(headers),
                Optional.empty(),
                Optional.empty(),
                Duration.ofSeconds(20),
                Optional.empty());
    }

    @Test
    void night_and_outlets_are_read_as_they_stand() throws RackFileFaulty {
        AlarmEntry alarms = parse(ALARMS);

        assertThat(alarms.nightFrom()).isEqualTo(LocalTime.of(21, 30));
        assertThat(alarms.nightTo()).isEqualTo(LocalTime.of(6, 15));
        assertThat(alarms.publicAddress()).contains(URI.create("https://rack.example"));
        assertThat(alarms.outlets())
                .containsExactly(
                        new OutletEntry(
                                "webhook",
                                Urgency.ADVISORY,
                                Optional.empty(),
                                OptionalInt.empty(),
                                webhook(
                                        new Given.Text("https://alarms.example/hook"),
                                        new HeaderEntry("Authorization", new Given.Environment("HOOK_AUTHORIZATION")),
                                        new HeaderEntry("X-Rack", new Given.Text("shed")))),
                        new OutletEntry(
                                "Ben at work",
                                Urgency.RINGING,
                                Optional.of(new HoursEntry(LocalTime.of(8, 0), LocalTime.of(17, 0))),
                                OptionalInt.of(15),
                                new Mail(
                                        "mail.example",
                                        587,
                                        Security.STARTTLS,
                                        Optional.of(new LoginEntry(
                                                "rack", new Given.InFile(Path.of("/srv/mail.password")))),
                                        "rack@example.org",
                                        "ben@example.org",
                                        Duration.ofSeconds(20),
                                        Optional.empty())));
    }

    @Test
    void what_is_left_out_has_the_usual_value() throws RackFileFaulty {
        var usual = new AlarmEntry(LocalTime.of(22, 0), LocalTime.of(7, 0), Optional.empty(), List.of());
        assertThat(parse("")).isEqualTo(usual);
        assertThat(parse("alarms:\n  night:\n    to: \"07:00\"\n")).isEqualTo(usual);
    }

    @Test
    void broker_and_buzzer_need_little() throws RackFileFaulty {
        assertThat(parse("alarms:\n  outlets:\n    - mqtt: {host: broker.example}\n    - buzzer: {}\n")
                        .outlets())
                .extracting(OutletEntry::way)
                .containsExactly(
                        new Mqtt(
                                "broker.example",
                                8883,
                                Security.TLS,
                                Optional.empty(),
                                "ebbwatch",
                                "ebbwatch",
                                Duration.ofMinutes(60),
                                Duration.ofSeconds(10),
                                Optional.empty()),
                        new BoardBuzzer(60));
    }

    @Test
    void a_webhook_may_be_given_method_body_and_a_secret_to_sign_with() throws RackFileFaulty {
        WayEntry way = parse(
                        """
                        alarms:
                          outlets:
                            - webhook:
                                url: https://alarms.example/hook
                                method: PUT
                                body: '{"text": "${what} ${toDo}", "loud": ${rings}}'
                                signingSecretFile: hook.secret
                                timeoutSeconds: 5
                                certificates: own.pem
                        """)
                .outlets()
                .get(0)
                .way();

        assertThat(way).isInstanceOfSatisfying(Webhook.class, webhook -> {
            assertThat(webhook.method()).isEqualTo(Method.PUT);
            assertThat(webhook.body().orElseThrow().filled(Map.of("what", "Hot.", "toDo", "Go.", "rings", "true")))
                    .isEqualTo("{\"text\": \"Hot. Go.\", \"loud\": true}");
            assertThat(webhook.signingSecret()).contains(new Given.InFile(Path.of("/srv/hook.secret")));
            assertThat(webhook.timeout()).isEqualTo(Duration.ofSeconds(5));
            assertThat(webhook.certificates()).contains(Path.of("/srv/own.pem"));
        });
    }

    @Test
    void an_address_may_be_kept_in_the_environment() throws RackFileFaulty {
        assertThat(parse("alarms:\n  outlets:\n    - webhook:\n        urlEnvironment: HOOK_URL\n")
                        .outlets()
                        .get(0)
                        .way())
                .isEqualTo(webhook(new Given.Environment("HOOK_URL")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "from: \"21:30\" | from: \"25:30\" | rack.yaml:3: from \"25:30\" is not allowed; from is a local time from 00:00 to 23:59, in quotes",
                "from: \"21:30\" | from: \"9:30\" | rack.yaml:3: from \"9:30\" is not allowed; from is a local time from 00:00 to 23:59, in quotes",
                "https://rack.example | https://rack.example/eb | rack.yaml:5: publicAddress is how a browser reaches this service, such as https://rack.example, without a path",
                "url: https://alarms.example/hook | url: alarms.example | rack.yaml:8: the address of a webhook begins with http:// or https:// and a host",
                "valueEnvironment: HOOK_AUTHORIZATION | valueEnvironment: Bearer 12 | rack.yaml:11: valueEnvironment is a name of letters, digits and underscores, not a value",
                "valueEnvironment: HOOK_AUTHORIZATION | value: Bearer 12 | rack.yaml:11: value is a secret and does not stand in a rack file; give with valueEnvironment the name of the environment variable that holds it, or with valueFile its file",
                "name: X-Rack | name: Host | rack.yaml:12: header Host is set by the service itself",
                "name: Ben at work | name: webhook | rack.yaml:14: there is an outlet named webhook already; give each its own name",
                "from: ringing | from: loud | rack.yaml:15: from \"loud\" is not known; from is one of advisory, ringing, danger",
                "to: \"17:00\" | to: \"08:00\" | rack.yaml:18: from and to are the same: no hour is left; leave hours out for all of them",
                "escalateAfterMinutes: 15 | escalateAfterMinutes: 0 | rack.yaml:19: escalateAfterMinutes \"0\" is not allowed; escalateAfterMinutes is a whole number from 1 to 1440",
                "passwordFile: mail.password | password: hush | rack.yaml:23: password is a secret and does not stand in a rack file; give with passwordEnvironment the name of the environment variable that holds it, or with passwordFile its file",
                "to: ben@example.org | to: ben@example.org, eve@example.org | rack.yaml:25: to \"ben@example.org, eve@example.org\" is not allowed; to is one address, such as anna@example.org; give one outlet for each person",
            })
    void a_fault_is_told_with_its_line_and_what_is_allowed(String line, String faulty, String told) {
        assertThat(ALARMS).contains(line);
        assertThat(faults(ALARMS.replace(line, faulty))).contains(told);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'{\"text\": ${what}' | body is no JSON when its fields are filled in; bodyType may be text/plain",
                "'{\"text\": \"${wat}\"}' | ${wat} is no field of a message; there are messageId,",
            })
    void a_body_that_cannot_be_filled_in_is_a_fault(String body, String told) {
        assertThat(faults("alarms:\n  outlets:\n    - webhook:\n        url: https://a.example\n        body: '" + body
                        + "'\n"))
                .singleElement()
                .asString()
                .startsWith("rack.yaml:5: " + told);
    }

    @Test
    void an_outlet_has_one_way() {
        String allowed = "rack.yaml:3: an outlet has one of webhook, mail, mqtt, buzzer";
        assertThat(faults("alarms:\n  outlets:\n    - name: none\n")).containsExactly(allowed);
        assertThat(faults("alarms:\n  outlets:\n    - buzzer: {}\n      webhook: {url: https://a.example}\n"))
                .containsExactly(allowed);
    }

    @Test
    void a_webhook_where_it_stood_once_is_told_where_it_stands_now() {
        assertThat(faults("alarms:\n  webhook: {url: https://a.example}\n"))
                .containsExactly(
                        "rack.yaml:2: webhook stands in a list now, so that there can be more: outlets, then - webhook");
    }

    @Test
    void a_secret_given_as_a_name_is_not_repeated() {
        assertThat(faults(
                        ALARMS.replace("HOOK_AUTHORIZATION", "Bearer hush").replace("https://alarms.example", "hush")))
                .hasSize(2)
                .allSatisfy(fault -> assertThat(fault).doesNotContain("hush"));
    }
}
