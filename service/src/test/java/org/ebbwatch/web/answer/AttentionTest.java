package org.ebbwatch.web.answer;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.web.InventedWorkshop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class AttentionTest {

    @Test
    void a_cell_on_its_way_needs_nobody() {
        assertThat(of(Phase.REST, Set.of())).isEqualTo(Attention.NONE);
    }

    @Test
    void what_the_service_does_itself_is_no_work_for_a_person() {
        assertThat(of(Phase.REST, EnumSet.of(Wish.CHECK_LEAD, Wish.OPEN_LOAD, Wish.CLOSE_LOAD, Wish.OPEN_STRING)))
                .isEqualTo(Attention.NONE);
    }

    @ParameterizedTest
    @EnumSource(value = Wish.class, names = "ASK_.*", mode = EnumSource.Mode.MATCH_ALL)
    void whatever_is_asked_of_a_person_is_work_and_has_words(Wish wish) {
        assertThat(of(Phase.REST, EnumSet.of(wish))).isEqualTo(Attention.WORK);
        assertThat(WaitsFor.of(EnumSet.of(wish))).singleElement().satisfies(waits -> assertThat(waits.words())
                .endsWith("."));
    }

    @Test
    void a_held_cell_needs_a_decision() {
        assertThat(of(Phase.HELD, EnumSet.of(Wish.ASK_METER))).isEqualTo(Attention.DECISION);
    }

    @ParameterizedTest
    @CsvSource({
        "STALLED, DRAIN, ADVISORY",
        "STALLED, HELD, DECISION",
        "SILENT, HELD, RINGING",
        "WARMING, TIE_OFF, RINGING",
        "HOT, HELD, DANGER",
        "REVERSED, DRAIN, DANGER",
        "HOT, WITHDRAWN, NONE"
    })
    void the_most_urgent_reason_counts(FindingKind kind, Phase phase, Attention attention) {
        Finding finding = new Finding(kind, 0, Phase.DRAIN, Double.NaN, Double.NaN, "", "something");

        assertThat(of(phase, Set.of(), finding)).isEqualTo(attention);
    }

    private static Attention of(Phase phase, Set<Wish> standing, Finding... findings) {
        return Attention.of(new PassageView(
                InventedWorkshop.card(1, "kite-1", "bench", 0),
                7,
                phase,
                "",
                1,
                0,
                0,
                0,
                false,
                false,
                false,
                Optional.empty(),
                List.of(findings),
                standing,
                Set.of(),
                List.of()));
    }
}
