package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.AlarmTransitions;
import org.ebbwatch.alarm.outlet.MessageField;
import org.ebbwatch.judge.FindingKind;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The handbook says of alarms what the program does. */
class AlarmDocumentTest {
    private String document;

    @BeforeEach
    void read() throws IOException {
        document = Files.readString(Path.of("..", "docs", "alarms.md"));
    }

    @Test
    void every_transition_stands_in_the_handbook_and_no_other() {
        assertThat(document)
                .as("Renew the tables: they are what AlarmTransitions.print() gives.")
                .contains("\n" + AlarmTransitions.print() + "\n");
    }

    @Test
    void every_kind_stands_beside_its_urgency() {
        for (AlarmKind kind : AlarmKind.values()) {
            String row = document.lines()
                    .filter(line -> line.startsWith("| " + kind.urgency().name().toLowerCase(Locale.ROOT) + " |"))
                    .findFirst()
                    .orElseThrow();
            assertThat(row).containsPattern("\\b" + kind + "\\b");
        }
    }

    @Test
    void every_latched_kind_and_every_step_is_named() {
        assertThat(document).contains("HOT, REVERSED and LOAD_HOT are **latched**");
        for (AlarmStep step : AlarmStep.values()) {
            assertThat(document.lines()
                            .filter(line -> line.startsWith("| `step` |"))
                            .findFirst()
                            .orElseThrow())
                    .contains(step.name());
        }
    }

    @Test
    void every_field_of_a_message_stands_in_the_handbook(@TempDir Path directory) {
        try (var bench = new DeskBench(directory, new HandClock())) {
            bench.desk.resume(List.of());
            bench.changed(Standings.draining(0, FindingKind.HOT));
            bench.deliver();
            assertThat(bench.delivered.get(0).fields().keySet())
                    .containsExactlyInAnyOrderElementsOf(MessageField.keys());
        }
        assertThat(MessageField.keys())
                .allSatisfy(field -> assertThat(document).contains('`' + field.replace("cause.", "") + '`'));
    }
}
