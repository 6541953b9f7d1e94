package org.ebbwatch.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.List;
import org.ebbwatch.passage.ContactInput;
import org.ebbwatch.passage.ContactInput.Means;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ContactReaderTest {
    private static final String RACK =
            """
            boards:
              - name: left
                port: COM3
                contacts:
                  - input: 0
                    means: smoke
                    normally: closed
                  - input: 3
                    means: mainsLost
                    normally: open
            """;

    private static RackFile parse(String text) throws RackFileFaulty {
        return RackFile.parse(text, "rack.yaml", Path.of("shed"));
    }

    @Test
    void contacts_are_read_with_what_they_mean_and_how_they_stand() throws RackFileFaulty {
        assertThat(parse(RACK).boards().get(0).contacts())
                .containsExactly(new ContactInput(0, Means.SMOKE, true), new ContactInput(3, Means.MAINS_LOST, false));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "input: 3         | input: 8         | rack.yaml:8: input \"8\" is not allowed; input is a whole number from 0 to 7",
                "input: 3         | input: 0         | rack.yaml:8: input 0 is wired already, in line 5",
                "means: smoke     | means: fire      | rack.yaml:6: means \"fire\" is not known; means is one of smoke, mainsLost",
                "normally: closed | normally: shut   | rack.yaml:7: normally \"shut\" is not known; normally is one of closed, open"
            })
    void what_is_wrong_is_told_with_its_line_and_what_is_allowed(String right, String wrong, String fault) {
        List<String> faults = catchThrowableOfType(RackFileFaulty.class, () -> parse(RACK.replace(right, wrong)))
                .faults();
        assertThat(faults).containsExactly(fault);
    }

    @Test
    void a_contact_says_how_it_stands_normally() {
        assertThat(catchThrowableOfType(
                                RackFileFaulty.class, () -> parse(RACK.replace("        normally: closed\n", "")))
                        .faults())
                .containsExactly("rack.yaml:5: a contact lacks normally; normally is one of closed, open");
    }
}
