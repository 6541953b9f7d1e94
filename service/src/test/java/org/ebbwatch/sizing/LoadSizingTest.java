package org.ebbwatch.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.data.Percentage;
import org.ebbwatch.intake.rule.CellChemistry;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.ProtectionBoard;
import org.ebbwatch.sizing.LoadWish.Surroundings;
import org.ebbwatch.sizing.SizingAnswer.Explained;
import org.ebbwatch.sizing.SizingAnswer.Refused;
import org.ebbwatch.sizing.SizingAnswer.Sized;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;
import org.junit.jupiter.params.provider.ValueSource;

/** Which load is named for a wish, and which wishes are refused. */
class LoadSizingTest {
    private double volts = 4.2;
    private int inSeries = 1;
    private boolean balanceLeads;
    private Condition condition = Condition.INTACT;
    private ProtectionBoard board = ProtectionBoard.NONE;
    private CellChemistry chemistry = CellChemistry.NMC;
    private Pace pace = new Pace.Rate(0.1);
    private Stock stock = bought(10);
    private Optional<WireGauge> wire = Optional.empty();
    private double air = 25;
    private int cells = 1;

    private static Stock bought(double watts) {
        return new Stock.Bought(PreferredSeries.E24, ResistorBuild.CEMENT, Optional.of(watts));
    }

    private LoadWish wish(double ampereHours) {
        return new LoadWish(
                chemistry,
                volts,
                ampereHours,
                inSeries,
                balanceLeads,
                condition,
                board,
                pace,
                stock,
                new Surroundings(air, Mounting.FREE_AIR, wire, 2, new Room(30, 3)),
                cells);
    }

    private Sized sized() {
        SizingAnswer answer = LoadSizing.size(wish(2.6));
        assertThat(answer).as(answer.toString()).isInstanceOf(Sized.class);
        return (Sized) answer;
    }

    private List<Refusal> refused() {
        SizingAnswer answer = LoadSizing.size(wish(2.6));
        assertThat(answer).as(answer.toString()).isInstanceOf(Refused.class);
        return ((Refused) answer).reasons();
    }

    @Nested
    class By_hand {

        /**
         * 2.6 Ah at C/10 are 0.26 A; 4.2 V / 0.26 A = 16.15 ohm; the next of E24 is 18 ohm: 4.2 / 18 = 0.2333 A, 0.98 W, 9.8 % of
         * 10 W, 0.98 W * 25 K/W + 25 = 49.5 degrees; 0.2333 A * 0.053 ohm/m * 2 m = 24.7 mV.
         */
        @Test
        void a_cell_of_2600_milliampere_hours_at_a_tenth_of_its_rating() {
            Sized sized = sized();

            assertThat(sized.network().ohms()).isEqualTo(18);
            assertThat(sized.amperes()).isCloseTo(0.2333, within(1e-4));
            assertThat(sized.watts()).isCloseTo(0.98, within(1e-3));
            assertThat(1 / sized.perHour()).isCloseTo(11.14, within(0.01));
            assertThat(sized.hardest().share()).isCloseTo(0.098, within(1e-4));
            assertThat(sized.warmest().celsius()).isCloseTo(49.5, within(0.01));
            assertThat(sized.warmest().touch()).isEqualTo(Touch.NOT_FOR_MINUTES);
            assertThat(sized.gauge()).isEqualTo(WireGauge.AWG_22);
            assertThat(sized.wireVolts()).isCloseTo(0.0247, within(2e-4));
        }

        /** Loads at 4.2 V (computed): 1 ohm 4.2 A 17.6 W ... 22 ohm 0.19 A 0.80 W. */
        @ParameterizedTest
        @CsvSource({
            "1, 4.2, 17.6",
            "2.2, 1.91, 8.02",
            "3.3, 1.27, 5.35",
            "4.7, 0.894, 3.75",
            "6.8, 0.618, 2.59",
            "10, 0.42, 1.76",
            "22, 0.19, 0.80"
        })
        void current_and_power_of_usual_loads_at_a_full_cell(double ohms, double amperes, double watts) {
            pace = new Pace.Rate(0.25);
            stock = Stock.Drawer.of(ohms + ":100", ResistorBuild.CEMENT);

            Sized sized = (Sized) LoadSizing.size(wish(20));

            assertThat(sized.amperes()).isCloseTo(amperes, within(0.005));
            assertThat(sized.watts()).isCloseTo(watts, within(0.05));
        }

        /**
         * A room of 30 cubic metres: 0.34 * 0.5 * 30 = 5.1 W/K by air; 6 * 30^(2/3) = 57.93 square metres, 57.9 W/K by its walls;
         * together 63.0 W/K. 3 K are 189 W; at 0.98 W each 192 cells.
         */
        @Test
        void a_room_of_thirty_cubic_metres_bears_192_of_them() {
            assertThat(new Room(30, 3).wattsPerKelvin()).isCloseTo(63.03, within(0.01));
            assertThat(sized().atOnce()).isEqualTo(192);
        }

        /** 0.8 * 2.6 Ah from 4.193 V to 0 V: mean 3.7 V over 1.03 of 2.08 Ah, 7.7 to 7.9 Wh; 16 of them 125 Wh and 15.7 W. */
        @Test
        void energy_of_the_cell_goes_into_the_load_and_the_cell_and_sixteen_make_sixteen_times_as_much() {
            cells = 16;
            Sized sized = sized();

            assertThat(sized.heldWattHours()).isBetween(7.6, 7.9);
            assertThat(sized.loadWattHours() + sized.cellWattHours())
                    .isCloseTo(sized.heldWattHours(), Percentage.withPercentage(0.5));
            assertThat(sized.rackWatts()).isCloseTo(15.68, within(0.01));
        }

        /**
         * Three in series, 12.6 V, 5 Ah at C/10: 12.6 / 0.5 = 25.2 ohm, of E24 27 ohm; 0.4667 A; 5.88 W, too much for half of 10 W,
         * so two side by side of 51 ohm: 25.5 ohm, 3.11 W each.
         */
        @Test
        void a_string_shares_its_power_among_two() {
            volts = 12.6;
            inSeries = 3;
            balanceLeads = true;

            Sized sized = (Sized) LoadSizing.size(wish(5));

            assertThat(sized.network().words()).isEqualTo("51 ohm 10 W in parallel with 51 ohm 10 W");
            assertThat(sized.pieces())
                    .allSatisfy(piece -> assertThat(piece.watts()).isCloseTo(3.113, within(1e-3)));
            assertThat(sized.cautions()).anyMatch(caution -> caution.contains("weakest"));
        }
    }

    @Nested
    class A_wish {

        @ParameterizedTest
        @ValueSource(doubles = {8, 12, 24, 72})
        void for_a_time_is_kept_by_the_largest_value_that_keeps_it(double hours) {
            pace = new Pace.Within(hours);
            stock = new Stock.Bought(PreferredSeries.E96, ResistorBuild.CEMENT, Optional.of(10.0));

            Sized sized = sized();

            double toTheEnd = sized.landmarks().get(2).hours();
            assertThat(toTheEnd).isLessThanOrEqualTo(hours).isGreaterThan(hours / 1.04);
            assertThat(sized.landmarks()).isSortedAccordingTo((a, b) -> Double.compare(a.hours(), b.hours()));
        }

        @Test
        void is_served_from_the_drawer_with_as_few_resistors_as_come_close() {
            stock = Stock.Drawer.of("33:10:4,8.2:10:4,100:10", ResistorBuild.CEMENT);

            assertThat(sized().network().words()).isEqualTo("8.2 ohm 10 W in series with 8.2 ohm 10 W");
        }

        @Test
        void that_the_drawer_serves_only_near_its_limit_is_served_with_a_caution() {
            stock = Stock.Drawer.of("18:1.5", ResistorBuild.CEMENT);

            assertThat(sized().hardest().share()).isBetween(0.5, 1.0);
            assertThat(sized().cautions()).anyMatch(caution -> caution.contains("at most half"));
        }

        @Test
        void for_nothing_in_particular_is_a_tenth_an_hour_or_a_twentieth_for_a_damaged_cell() {
            assertThat(Pace.usual(Condition.INTACT)).isEqualTo(new Pace.Rate(0.1));
            assertThat(Pace.usual(Condition.SWOLLEN)).isEqualTo(new Pace.Rate(0.05));
        }

        @ParameterizedTest
        @CsvSource({"C/10, 0.1", "c/20, 0.05", "0.25, 0.25", " C/2.5 , 0.4"})
        void for_a_rate_is_read_as_people_write_it(String text, double perHour) {
            assertThat(Pace.Rate.of(text).perHour()).isCloseTo(perHour, within(1e-12));
        }

        @ParameterizedTest
        @ValueSource(strings = {"", "C", "C/", "C/0", "fast", "-0.1", "1/10", "NaN", "C/10/2"})
        void for_a_rate_that_is_none_is_refused(String text) {
            assertThatThrownBy(() -> Pace.Rate.of(text))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("takes");
        }

        @Test
        void whose_cells_are_more_than_the_room_bears_is_told_with_how_many_to_begin() {
            cells = 200;

            assertThat(sized().cautions()).anyMatch(caution -> caution.contains("begin with 192"));
        }
    }

    @Nested
    class Refused_is {

        @Test
        void faster_than_a_third_of_the_rating_an_hour_with_the_soonest_time() {
            pace = new Pace.Rate(0.4);
            Refusal.TooFast tooFast = (Refusal.TooFast) refused().get(0);
            assertThat(tooFast.why()).contains("C/2.5").contains("C/3");

            pace = new Pace.Within(tooFast.soonestHours() + 0.3);
            stock = new Stock.Bought(PreferredSeries.E96, ResistorBuild.CEMENT, Optional.of(25.0));
            assertThat(sized().perHour()).isLessThanOrEqualTo(1 / 3.0 + 1e-9);

            pace = new Pace.Within(tooFast.soonestHours() - 0.01);
            assertThat(refused()).first().isInstanceOf(Refusal.TooFast.class);
        }

        @ParameterizedTest
        @EnumSource(
                value = Condition.class,
                names = {"SWOLLEN", "DENTED", "UNKNOWN"})
        void faster_than_a_twentieth_for_what_may_be_damaged(Condition damaged) {
            condition = damaged;
            pace = new Pace.Rate(0.051);
            assertThat(refused()).hasOnlyElementsOfType(Refusal.TooFast.class);

            pace = new Pace.Rate(0.05);
            assertThat(sized().cautions()).anyMatch(caution -> caution.contains("pierce"));
        }

        @ParameterizedTest
        @EnumSource(
                value = Condition.class,
                mode = Mode.EXCLUDE,
                names = {"INTACT", "SWOLLEN", "DENTED", "UNKNOWN"})
        void any_load_for_what_does_not_go_on_a_rack(Condition bad) {
            condition = bad;

            assertThat(refused()).containsExactly(new Refusal.NotForARack(bad));
        }

        @Test
        void a_string_without_balance_leads() {
            volts = 8.4;
            inSeries = 2;

            assertThat(refused()).containsExactly(new Refusal.NoBalanceLeads(2));
        }

        @Test
        void a_cell_behind_a_protection_board() {
            board = ProtectionBoard.PRESENT;

            assertThat(refused()).containsExactly(new Refusal.BoardPresent());
            assertThat(refused().get(0).instead()).contains("one lead at a time");
        }

        @Test
        void more_volts_than_a_cell_can_have_and_hardly_any() {
            volts = 4.3;
            assertThat(refused()).hasOnlyElementsOfType(Refusal.TooManyVolts.class);

            volts = 0.9;
            assertThat(refused()).hasOnlyElementsOfType(Refusal.ShowsNothing.class);
        }

        @Test
        void a_resistor_over_its_rating() {
            stock = Stock.Drawer.of("18:0.5", ResistorBuild.CEMENT);
            assertThat(refused()).first().isInstanceOf(Refusal.OverRating.class);
            assertThat(refused().get(0).why()).contains("0.98 W").contains("0.5 W");

            stock = Stock.Drawer.of("18:1", ResistorBuild.CEMENT);
            assertThat(sized().hardest().share()).isLessThan(1);
            air = 60;
            assertThat(refused()).as("in warm air").first().isInstanceOf(Refusal.OverRating.class);
        }

        @Test
        void a_drawer_in_which_nothing_is_large_enough() {
            stock = Stock.Drawer.of("1:50", ResistorBuild.CEMENT);

            assertThat(refused()).hasOnlyElementsOfType(Refusal.NothingFits.class);
        }

        @Test
        void a_wire_that_is_too_thin() {
            pace = new Pace.Rate(0.3);
            wire = Optional.of(WireGauge.AWG_28);

            assertThat(refused()).hasOnlyElementsOfType(Refusal.WireTooThin.class);
            assertThat(refused().get(0).instead()).contains("AWG 22");
        }

        @Test
        void everything_dangerous_at_once() {
            volts = 12.6;
            inSeries = 3;
            condition = Condition.LEAKING;
            board = ProtectionBoard.PRESENT;

            assertThat(refused()).hasSize(3);
        }

        @Test
        void never_without_saying_what_to_do_instead() {
            condition = Condition.CASING_TORN;

            assertThat(refused()).allSatisfy(reason -> {
                assertThat(reason.why()).endsWith(".");
                assertThat(reason.instead()).endsWith(".");
            });
        }

        @Test
        void a_number_out_of_its_range_with_the_range() {
            assertThatThrownBy(() -> new Room(0.5, 3)).hasMessageContaining("1 to 100000");
            assertThatThrownBy(() -> wish(Double.NaN)).hasMessageContaining("ampere hours takes 0.01 to 1000");
        }
    }

    /** Whatever is asked, a load that is named is no danger by any rule above. */
    @Property
    void a_load_that_is_named_is_slow_enough_carries_its_power_and_is_explained(
            @ForAll @DoubleRange(min = 1.1, max = 4.2) double cellVolts,
            @ForAll @DoubleRange(min = 0.1, max = 30) double ampereHours,
            @ForAll @DoubleRange(min = 0.01, max = 0.4) double perHour,
            @ForAll @IntRange(min = 1, max = 4) int series,
            @ForAll @DoubleRange(min = 1, max = 50) double watts,
            @ForAll Condition its) {
        volts = cellVolts * series;
        inSeries = series;
        balanceLeads = true;
        condition = its;
        pace = new Pace.Rate(perHour);
        stock = bought(watts);
        if (LoadSizing.size(wish(ampereHours)) instanceof Sized sized) {
            assertThat(sized.perHour()).isLessThanOrEqualTo(perHour * (1 + 1e-9));
            assertThat(sized.perHour()).isLessThanOrEqualTo(its.fastestRate().orElse(0.0) * (1 + 1e-9));
            assertThat(sized.hardest().share()).isLessThanOrEqualTo(1);
            assertThat(sized.gauge().mayCarryAmperes()).isGreaterThanOrEqualTo(sized.amperes());
            assertThat(sized.explained()).extracting(Explained::why).allMatch(why -> !why.isBlank());
            assertThat(sized.landmarks()).allMatch(landmark -> landmark.hours() >= 0 && landmark.hours() < 1e5);
        }
    }
}
