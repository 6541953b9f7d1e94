package org.ebbwatch.intake.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.stream.Collectors;
import org.ebbwatch.intake.rule.Triage.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Whether a cell may go onto the rack, and what whoever handles it is told. */
class TriageTest {
    private static IntakeFields card(Condition condition, ProtectionBoard board, Double volts) {
        return card(CellChemistry.NMC, 1, condition, board, volts);
    }

    private static IntakeFields card(
            CellChemistry chemistry, int inSeries, Condition condition, ProtectionBoard board, Double volts) {
        return new IntakeFields(
                Optional.of(chemistry),
                Optional.of(inSeries),
                Optional.of(2.6),
                Optional.empty(),
                Optional.of(condition),
                Optional.of(board),
                Optional.ofNullable(volts),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** Torn, leaking and smelling cells are kept off the rack, warm and wet ones until that has passed (common practice, no source). */
    @ParameterizedTest
    @CsvSource({
        "INTACT, ADMITTED",
        "UNKNOWN, ADMITTED",
        "SWOLLEN, ADMITTED",
        "DENTED, ADMITTED",
        "WET, NOT_YET",
        "WARM, NOT_YET",
        "CASING_TORN, TURNED_AWAY",
        "SMELL_OF_SOLVENT, TURNED_AWAY",
        "LEAKING, TURNED_AWAY"
    })
    void the_condition_decides_first(Condition condition, Verdict verdict) {
        assertThat(Triage.of(card(condition, ProtectionBoard.NONE, 3.7)).verdict())
                .isEqualTo(verdict);
    }

    @ParameterizedTest
    @EnumSource(Condition.class)
    void whoever_handles_a_cell_that_is_not_intact_is_told_what_it_may_do_and_what_is_usually_done(
            Condition condition) {
        Triage triage = Triage.of(card(condition, ProtectionBoard.NONE, 3.7));
        String told = triage.objections().stream()
                        .map(objection -> objection.why() + ' ' + objection.toDo())
                        .collect(Collectors.joining(" "))
                + triage.cautions();

        if (condition != Condition.INTACT) {
            assertThat(told).contains(condition.danger()).contains(condition.practice());
        }
        if (!condition.isForARack()) {
            assertThat(condition.practice()).contains("local rules").contains("licensed practice");
        }
    }

    @Test
    void behind_a_protection_board_it_will_never_be_empty_and_the_watch_would_notice_by_cut_off() {
        Triage triage = Triage.of(card(Condition.INTACT, ProtectionBoard.PRESENT, 3.7));

        assertThat(triage.verdict()).isEqualTo(Verdict.NOT_YET);
        assertThat(triage.objections()).containsExactly(new Objection.BoardPresent());
        assertThat(triage.objections().get(0).why()).contains("never be empty").contains("CUT_OFF");
        assertThat(triage.objections().get(0).toDo()).contains("one lead at a time");
    }

    @Test
    void a_board_nobody_looked_for_is_admitted_with_a_caution() {
        Triage triage = Triage.of(card(Condition.INTACT, ProtectionBoard.UNKNOWN, 3.7));

        assertThat(triage.verdict()).isEqualTo(Verdict.ADMITTED);
        assertThat(triage.cautions()).anyMatch(caution -> caution.contains("CUT_OFF"));
    }

    @Test
    void a_cell_that_shows_next_to_nothing_goes_the_way_of_the_dead_on_arrival() {
        assertThat(Triage.of(card(Condition.INTACT, ProtectionBoard.NONE, 0.4)).cautions())
                .anyMatch(caution -> caution.startsWith("Dead on arrival") && caution.contains("not proven"));
        assertThat(Triage.of(card(Condition.INTACT, ProtectionBoard.NONE, 3.7)).cautions())
                .noneMatch(caution -> caution.startsWith("Dead on arrival"));
    }

    @Test
    void a_string_is_told_about_its_weakest_cell() {
        assertThat(Triage.of(card(CellChemistry.NMC, 3, Condition.INTACT, ProtectionBoard.NONE, 11.1))
                        .cautions())
                .anyMatch(caution -> caution.contains("weakest"));
    }

    @Test
    void a_cell_that_nobody_measured_or_knows_waits_unless_it_is_better_not_touched() {
        assertThat(Triage.of(card(Condition.INTACT, ProtectionBoard.NONE, null)).objections())
                .containsExactly(new Objection.NotMeasured());
        assertThat(Triage.of(card(CellChemistry.UNKNOWN, 1, Condition.INTACT, ProtectionBoard.NONE, 3.7))
                        .objections())
                .containsExactly(new Objection.ChemistryUnknown());
        assertThat(Triage.of(card(CellChemistry.UNKNOWN, 1, Condition.LEAKING, ProtectionBoard.NONE, null))
                        .objections())
                .containsExactly(new Objection.NotOnARack(Condition.LEAKING));
    }

    /** Ends of charge: 4.20 V and 3.65 V a cell are the trade's, 4.45 V for pouch cells with cobalt (from memory). */
    @ParameterizedTest
    @CsvSource({
        "NMC, 1, 4.20, FITS",
        "NMC, 1, 4.31, HIGH",
        "LCO, 1, 4.40, FITS",
        "LFP, 1, 3.65, FITS",
        "LFP, 1, 3.8, HIGH",
        "NMC, 1, 2.5, FITS",
        "NMC, 1, 1.9, LOW",
        "NMC, 1, 0.99, SHOWS_NOTHING",
        "NMC, 1, 0, SHOWS_NOTHING",
        "NMC, 1, 5.1, IMPOSSIBLE",
        "NMC, 1, 8.2, IMPOSSIBLE",
        "NMC, 2, 8.2, FITS",
        "NMC, 3, 8.2, FITS",
        "NMC, 4, 7.4, LOW",
        "NMC, 3, 0.3, LOW",
        "NMC, 1, -0.03, SHOWS_NOTHING",
        "NMC, 1, -3.7, REVERSED",
        "UNKNOWN, 1, 4.4, FITS"
    })
    void volts_have_to_fit_chemistry_and_number_in_series(
            CellChemistry chemistry, int inSeries, double volts, Voltage voltage) {
        assertThat(Voltage.of(chemistry, inSeries, volts)).isEqualTo(voltage);
        assertThat(voltage.why(chemistry, inSeries, volts)).endsWith(".").contains("V a cell");
    }

    @Test
    void the_next_cell_of_a_box_takes_over_its_label_and_nothing_that_has_to_be_looked_at() {
        IntakeFields first = card(Condition.INTACT, ProtectionBoard.NONE, 3.7);

        IntakeFields next = first.common();

        assertThat(next.chemistry()).isEqualTo(first.chemistry());
        assertThat(next.ratedAmpereHours()).isEqualTo(first.ratedAmpereHours());
        assertThat(next.condition()).isEmpty();
        assertThat(next.protectionBoard()).isEmpty();
        assertThat(next.measuredVolts()).isEmpty();
    }
}
