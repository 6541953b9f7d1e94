package org.ebbwatch.intake.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.sizing.LoadSizing;
import org.ebbwatch.sizing.LoadWish;
import org.ebbwatch.sizing.LoadWish.Surroundings;
import org.ebbwatch.sizing.Mounting;
import org.ebbwatch.sizing.Pace;
import org.ebbwatch.sizing.PreferredSeries;
import org.ebbwatch.sizing.ResistorBuild;
import org.ebbwatch.sizing.Room;
import org.ebbwatch.sizing.SizingAnswer.Sized;
import org.ebbwatch.sizing.Stock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Whatever hurts people on this job is told where a person meets it. */
class DangerTest {

    /** The list of the trade, in the order in which a handbook for this job tells it (common practice, no source). */
    @Test
    void nothing_is_missing_from_the_list() {
        assertThat(Danger.values())
                .containsExactly(
                        Danger.ONLY_LOOKED_EMPTY,
                        Danger.CHARGED_AGAIN,
                        Danger.REVERSED_IN_A_STRING,
                        Danger.HOT_RESISTOR,
                        Danger.BOTH_LEADS_CUT,
                        Danger.HYDROGEN_FLUORIDE,
                        Danger.LEFT_ON_WOOD,
                        Danger.PUFFED_POUCH_PIERCED);
    }

    @ParameterizedTest
    @EnumSource(Danger.class)
    void every_danger_stands_in_the_safety_page(Danger danger) throws IOException {
        String page =
                Files.readString(Path.of(System.getProperty("basedir", ".")).resolve("../docs/safety.md"));

        assertThat(page.replaceAll("\\s+", " ")).contains(danger.words());
    }

    @ParameterizedTest
    @EnumSource(Danger.class)
    void every_danger_is_told_where_a_cell_is_taken_in_or_its_load_is_sized(Danger danger) {
        List<String> told = new ArrayList<>();
        for (Condition condition : Condition.values()) {
            told.addAll(Triage.of(card(condition, 1, 3.7)).cautions());
        }
        told.addAll(Triage.of(card(Condition.INTACT, 3, 11.1)).cautions());
        told.addAll(Triage.of(card(Condition.INTACT, 1, 0.2)).cautions());
        told.addAll(sized(1).cautions());

        assertThat(told).anyMatch(caution -> caution.contains(danger.words()));
    }

    /** Which danger is met where. */
    @Test
    void each_is_told_to_whom_it_threatens() {
        assertThat(Triage.of(card(Condition.SWOLLEN, 1, 3.7)).cautions()).contains(Danger.PUFFED_POUCH_PIERCED.words());
        assertThat(Triage.of(card(Condition.LEAKING, 1, null)).cautions()).contains(Danger.HYDROGEN_FLUORIDE.words());
        assertThat(Triage.of(card(Condition.INTACT, 2, 7.4)).cautions()).contains(Danger.REVERSED_IN_A_STRING.words());
        assertThat(Triage.of(card(Condition.INTACT, 1, 0.2)).cautions()).contains(Danger.CHARGED_AGAIN.words());
        assertThat(sized(3).cautions())
                .anyMatch(caution -> caution.contains(Danger.HOT_RESISTOR.words()))
                .contains(Danger.REVERSED_IN_A_STRING.words());
        assertThat(Triage.of(card(Condition.INTACT, 1, 3.7)).cautions())
                .doesNotContain(Danger.PUFFED_POUCH_PIERCED.words(), Danger.HYDROGEN_FLUORIDE.words());
    }

    private static IntakeFields card(Condition condition, int inSeries, Double volts) {
        return new IntakeFields(
                Optional.of(CellChemistry.NMC),
                Optional.of(inSeries),
                Optional.of(2.6),
                Optional.empty(),
                Optional.of(condition),
                Optional.of(ProtectionBoard.NONE),
                Optional.ofNullable(volts),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Sized sized(int inSeries) {
        return (Sized) LoadSizing.size(new LoadWish(
                CellChemistry.NMC,
                4.1 * inSeries,
                2.6,
                inSeries,
                true,
                Condition.INTACT,
                ProtectionBoard.NONE,
                new Pace.Rate(0.2),
                new Stock.Bought(PreferredSeries.E24, ResistorBuild.CEMENT, Optional.empty()),
                new Surroundings(25, Mounting.FREE_AIR, Optional.empty(), 1, new Room(30, 3)),
                1));
    }
}
