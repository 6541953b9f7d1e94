package org.ebbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.http.HttpResponse;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer;
import org.ebbwatch.alarm.AlarmReceipt;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Cause;
import org.ebbwatch.alarm.book.Cover;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class AcknowledgePageTest {
    private static final String NASTY = "<script>alert('\"&\"')</script>";
    private static final AlarmView ALARM = new AlarmView(
            new UUID(7, 1),
            3,
            AlarmKind.HOT,
            AlarmKind.HOT.urgency(),
            true,
            "rack",
            AlarmState.UNACKNOWLEDGED,
            Cover.NONE,
            true,
            AlarmKind.HOT.what(),
            AlarmKind.HOT.consequence(),
            AlarmKind.HOT.toDo(),
            Cause.ofService(NASTY),
            List.of(NASTY),
            0,
            "",
            Optional.empty(),
            Set.of());
    private static final AlarmReceipt RECEIPT = new AlarmReceipt(
            new UUID(7, 1), 4, AlarmKind.HOT, AlarmStep.ACKNOWLEDGED, AlarmState.ACKNOWLEDGED, Cover.NONE, NASTY);

    static List<LinkAnswer> answers() {
        return List.of(
                new LinkAnswer.Open(ALARM),
                new LinkAnswer.Done(RECEIPT, true),
                new LinkAnswer.Done(RECEIPT, false),
                new LinkAnswer.Used(RECEIPT),
                new LinkAnswer.Expired(),
                new LinkAnswer.Changed(ALARM),
                new LinkAnswer.Over(),
                new LinkAnswer.Bad());
    }

    private static String body(LinkAnswer answer) {
        return AcknowledgePage.of(answer).body();
    }

    @ParameterizedTest
    @MethodSource("answers")
    void every_page_is_whole_holds_no_script_and_says_that_cells_burn(LinkAnswer answer) {
        HttpResponse<String> page = AcknowledgePage.of(answer);

        assertThat(page.body())
                .startsWith("<!doctype html>")
                .containsOnlyOnce("<h1>")
                .contains("A cell can burn whatever a page says.")
                .doesNotContain("<script")
                .doesNotContain("%s");
        assertThat(page.body().contains("<form")).isEqualTo(answer instanceof LinkAnswer.Open);
    }

    @Test
    void what_is_about_no_cell_and_no_board_is_about_the_rack() {
        assertThat(AcknowledgePage.where(List.of("A", "B"), "shed")).isEqualTo("Cells A, B, board shed.");
        assertThat(AcknowledgePage.where(List.of("A"), "")).isEqualTo("Cell A.");
        assertThat(AcknowledgePage.where(List.of(), "shed")).isEqualTo("Board shed.");
        assertThat(AcknowledgePage.where(List.of(), "")).isEqualTo("The rack.");
    }

    @Test
    void what_people_and_boards_wrote_is_escaped() {
        assertThat(body(new LinkAnswer.Open(ALARM)))
                .contains("&lt;script&gt;alert(&#39;&quot;&amp;&quot;&#39;)&lt;/script&gt;");
    }

    @Test
    void that_it_would_not_outlive_a_power_cut_is_said() {
        assertThat(body(new LinkAnswer.Done(RECEIPT, false))).contains("It is not on disk yet");
        assertThat(body(new LinkAnswer.Done(RECEIPT, true))).doesNotContain("on disk");
    }
}
