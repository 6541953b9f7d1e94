package org.ebbwatch.web.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.ebbwatch.alarm.book.AlarmBook;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry.Work;
import org.ebbwatch.judge.LoadStep;
import org.ebbwatch.passage.Happening;
import org.ebbwatch.passage.Happenings;
import org.ebbwatch.plan.Task;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The document of acting over REST says what the code does. */
class RestDocumentTest {
    private String document;

    @BeforeEach
    void read() throws IOException {
        document = Files.readString(Path.of(System.getProperty("basedir", ".")).resolve("../docs/rest.md"));
    }

    private String section(String title) {
        return document.replaceFirst("(?s).*\n## " + title + "\n", "").replaceFirst("(?s)\n## .*", "");
    }

    @ParameterizedTest
    @EnumSource(ProblemKind.class)
    void every_refusal_stands_in_its_table_with_its_status(ProblemKind kind) {
        assertThat(section("Refusals").lines().filter(line -> line.contains('`' + kind.slug() + '`')))
                .hasSize(1)
                .allMatch(line -> line.split("\\|", -1)[1].contains(
                        Integer.toString(kind.status().getCode())));
    }

    @Test
    void it_names_every_errand_every_work_every_happening_and_every_question() {
        assertThat(Arrays.stream(Task.values())).allMatch(task -> document.contains('`' + task.name() + '`'));
        assertThat(Arrays.stream(Work.values()))
                .allMatch(work -> section("Announced work").contains("| `" + work + "` |"));
        assertThat(Arrays.stream(Happening.Kind.values()))
                .allMatch(kind -> section("Live").contains('`' + kind.name() + '`'));
        assertThat(Arrays.stream(LoadStep.values())).allMatch(step -> document.contains('`' + step.name() + '`'));
        assertThat(section("Live")).contains("the last " + Happenings.KEPT);
    }

    @Test
    void its_whole_job_does_every_act_of_an_ordinary_passage_and_names_the_others() {
        assertThat(Arrays.stream(Act.values()).filter(act -> act != Act.SPARK))
                .allMatch(act -> document.contains(act.name()));
        assertThat(section("The whole job").indexOf("PUT_ON"))
                .isLessThan(section("The whole job").indexOf("\"TAKE_OFF\""));
    }

    @Test
    void it_names_every_step_a_person_may_ask_of_an_alarm_and_no_other() {
        for (AlarmStep step : AlarmStep.values()) {
            assertThat(section("Alarms").contains("| `" + step + "` |"))
                    .as(step.name())
                    .isEqualTo(step.isAPersons());
        }
        assertThat(section("Alarms"))
                .contains("`minutes`, 1 to " + AlarmBook.LONGEST_SHELVING.toMinutes())
                .contains("at most " + AlarmBook.LONGEST_NAME + " characters")
                .contains("`operator`");
    }
}
