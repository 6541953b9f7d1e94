package org.ebbwatch.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a rack file says of the morning report and of the sign of life. */
class MorningEntryTest {
    private static final String RACK =
            """
            boards:
              - name: left
                port: COM3
            alarms:
              outlets:
                - webhook:
                    url: https://alarms.example/hook
            """;

    private static final String ENTRIES =
            """
            morningReport:
              at: "06:45"
              outlets: [webhook]
            signOfLife:
              url: https://life.example/hush
              method: POST
              everyMinutes: 10
            """;

    private static RackFile parse(String entries) throws RackFileFaulty {
        return RackFile.parse(entries + RACK, "rack.yaml", Path.of("/srv"));
    }

    private static List<String> faults(String entries) {
        return catchThrowableOfType(RackFileFaulty.class, () -> parse(entries)).faults();
    }

    @Test
    void both_are_read_as_they_stand() throws RackFileFaulty {
        RackFile file = parse(ENTRIES);

        assertThat(file.morningReport()).contains(new MorningEntry(LocalTime.of(6, 45), Set.of("webhook")));
        assertThat(file.signOfLife())
                .contains(new LifeEntry(Optional.of("https://life.example/hush"), Optional.empty(), true, 10));
    }

    @Test
    void what_is_left_out_has_the_usual_value() throws RackFileFaulty {
        RackFile file = parse("morningReport:\n  outlets: [webhook]\nsignOfLife:\n  urlEnvironment: LIFE_URL\n");

        assertThat(file.morningReport()).contains(new MorningEntry(LocalTime.of(7, 0), Set.of("webhook")));
        assertThat(file.signOfLife()).contains(new LifeEntry(Optional.empty(), Optional.of("LIFE_URL"), false, 5));
        assertThat(parse("").morningReport()).isEmpty();
        assertThat(parse("").signOfLife()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "at: \"06:45\" | at: \"24:00\" | rack.yaml:2: at \"24:00\" is not allowed; at is a local time from 00:00 to 23:59, in quotes",
                "[webhook] | [mail] | rack.yaml:3: outlets names the outlets that carry the report; there are webhook",
                "[webhook] | [] | rack.yaml:3: outlets names at least one outlet that carries the report, such as [webhook]",
                "url: https://life.example/hush | url: life.example | rack.yaml:5: url begins with http:// or https:// and a host",
                "url: https://life.example/hush | urlEnvironment: https://life.example | rack.yaml:5: urlEnvironment is a name of letters, digits and underscores, not a value",
                "everyMinutes: 10 | everyMinutes: 0 | rack.yaml:7: everyMinutes \"0\" is not allowed; everyMinutes is a whole number from 1 to 1440",
            })
    void a_fault_is_told_with_its_line_and_what_is_allowed(String right, String wrong, String told) {
        assertThat(ENTRIES).contains(right);
        assertThat(faults(ENTRIES.replace(right, wrong))).contains(told);
    }

    @Test
    void an_address_is_given_once() {
        assertThat(faults(ENTRIES.replace("  method: POST", "  urlEnvironment: LIFE_URL")))
                .anySatisfy(fault -> assertThat(fault).endsWith("not both"));
        assertThat(faults("signOfLife:\n  everyMinutes: 5\n"))
                .anySatisfy(fault -> assertThat(fault).contains("give url, or with urlEnvironment"));
    }
}
