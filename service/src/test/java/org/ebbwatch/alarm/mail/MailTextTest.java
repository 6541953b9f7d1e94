package org.ebbwatch.alarm.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.mail.Mails.message;

import java.util.Map;
import org.ebbwatch.alarm.book.AlarmStep;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class MailTextTest {

    @ParameterizedTest
    @CsvSource({
        "RAISED, HOT A-17",
        "TOLD, HOT A-17",
        "RETURNED, HOT A-17: gone",
        "ACKNOWLEDGED, HOT A-17: acknowledged",
        "ESCALATED, HOT A-17: nobody has acknowledged it"
    })
    void the_subject_says_what_and_where_and_what_came_of_it(String step, String subject) {
        assertThat(new MailText(message(1, step, Map.of())).subject()).isEqualTo(subject);
    }

    @Test
    void the_subject_of_what_is_about_no_cell_names_the_board_or_nothing() {
        assertThat(new MailText(message(1, "RAISED", Map.of("cells", "", "cause.channel", ""))).subject())
                .isEqualTo("HOT board shed");
        assertThat(new MailText(message(1, "RAISED", Map.of("cells", "", "cause.board", ""))).subject())
                .isEqualTo("HOT");
    }

    @Test
    void the_subject_stays_short_and_on_one_line() {
        String many = "cell 10, cell 11, cell 12, cell 13, cell 14, cell 15, cell 16, cell 17";
        assertThat(new MailText(message(1, "RAISED", Map.of("cells", many))).subject())
                .hasSizeLessThan(80)
                .startsWith("HOT cell 10, cell 11")
                .endsWith("...");
        assertThat(new MailText(message(1, "RAISED", Map.of("cells", "A\r\nBcc: eve@example.org"))).subject())
                .doesNotContain("\r", "\n");
    }

    @Test
    void the_text_says_what_where_what_to_do_and_why() {
        assertThat(new MailText(Mails.raised()).body().split("\r\n"))
                .containsExactly(
                        "A cell is hot.",
                        "",
                        "Where:   cell A-17, board shed, channel 3",
                        "To do:   Keep away. Clear the room.",
                        "Else:    It may vent poisonous smoke.",
                        "Why:     61.5 degC, trip at 60.0 degC.",
                        "Since:   2026-11-25T11:58:00Z",
                        "Now:     raised, 2026-11-25T12:00:00Z",
                        "",
                        "Ebbwatch is a second pair of eyes, no safety device. Your emergency plan comes first.");
    }

    @Test
    void who_did_what_and_why_and_that_a_board_is_simulated_are_said() {
        assertThat(new MailText(message(
                                2, "SHELVED", Map.of("who", "Ben", "reason", "a fan comes", "cause.simulated", "true")))
                        .body())
                .contains(
                        "Now:     shelved by Ben: a fan comes, 2026-11-25T12:00:00Z\r\n         The board is simulated.");
    }

    @Test
    void a_link_is_shown_where_there_is_one() {
        assertThat(new MailText(message(1, "RAISED", Map.of("acknowledgeLink", "https://rack.example/a/b"))).body())
                .contains("\r\nTo say that you know of it (once, within a day):\r\nhttps://rack.example/a/b\r\n");
    }

    @ParameterizedTest
    @EnumSource(AlarmStep.class)
    void every_step_has_an_id_of_its_own_that_stays_the_same(AlarmStep step) {
        var one = message(4, step.name(), Map.of());
        assertThat(new MailText(one).id("example.org"))
                .isEqualTo(new MailText(one).id("example.org"))
                .isNotEqualTo(new MailText(message(5, step.name(), Map.of())).id("example.org"))
                .endsWith("@example.org");
    }

    @Test
    void a_notice_is_told_in_its_own_words_and_answers_nothing() {
        Map<String, String> fields =
                Map.of("alarmId", "", "what", "No alarm was raised.", "text", "Morning report\n\nCells\n  none\n");
        var text = new MailText(message(1, "TOLD", fields));

        assertThat(text.subject()).isEqualTo("No alarm was raised.");
        assertThat(text.body()).isEqualTo("Morning report\r\n\r\nCells\r\n  none\r\n");
        assertThat(text.id("example.org"))
                .isEqualTo(text.firstId("example.org"))
                .endsWith("@example.org");
    }
}
