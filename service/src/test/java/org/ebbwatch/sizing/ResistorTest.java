package org.ebbwatch.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ebbwatch.sizing.Mounting.FREE_AIR;
import static org.ebbwatch.sizing.Mounting.HEATSINK;
import static org.ebbwatch.sizing.ResistorBuild.ALUMINIUM;
import static org.ebbwatch.sizing.ResistorBuild.CEMENT;
import static org.ebbwatch.sizing.ResistorBuild.FILM;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What resistors and wires may carry, and how warm they get. */
class ResistorTest {

    /** Computed from the rule P = Pn (Tmax - T) / (Tmax - Tref), as published derating guides give it. */
    @ParameterizedTest
    @CsvSource({
        // 50 W aluminium on its heatsink: 50 * (200 - T) / 175
        "ALUMINIUM, 50, 25, 50",
        "ALUMINIUM, 50, 40, 45.7",
        "ALUMINIUM, 50, 50, 42.9",
        "ALUMINIUM, 50, 70, 37.1",
        "ALUMINIUM, 50, 100, 28.6",
        "ALUMINIUM, 50, 150, 14.3",
        "ALUMINIUM, 50, 200, 0",
        // 10 W film: 10 * (155 - T) / 85
        "FILM, 10, 70, 10",
        "FILM, 10, 85, 8.24",
        "FILM, 10, 100, 6.47",
        "FILM, 10, 125, 3.53",
        // 10 W cement: 10 * (275 - T) / 250
        "CEMENT, 10, 25, 10",
        "CEMENT, 10, 70, 8.2",
        "CEMENT, 10, 100, 7.0",
        "CEMENT, 10, 150, 5.0"
    })
    void a_rating_falls_along_a_straight_line(ResistorBuild build, double rated, double celsius, double mayCarry) {
        assertThat(build.mayCarry(rated, HEATSINK, celsius)).isCloseTo(mayCarry, within(0.05));
    }

    @Test
    void below_the_reference_nothing_is_gained_and_above_the_highest_nothing_is_left() {
        assertThat(FILM.mayCarry(10, FREE_AIR, -20)).isEqualTo(10);
        assertThat(CEMENT.mayCarry(10, FREE_AIR, 300)).isZero();
    }

    /** 30 to 40 % of the rating in free air (from memory). */
    @Test
    void an_aluminium_housing_without_its_heatsink_carries_about_a_third() {
        assertThat(ALUMINIUM.mayCarry(50, FREE_AIR, 25) / 50).isBetween(0.3, 0.4);
        assertThat(CEMENT.mayCarry(10, FREE_AIR, 25)).isEqualTo(CEMENT.mayCarry(10, HEATSINK, 25));
    }

    @Test
    void a_resistor_at_its_full_rating_is_as_hot_as_its_curve_ends() {
        // 10 W * 250 K / 10 W above air of 25 degrees
        assertThat(CEMENT.surfaceCelsius(10, 10, FREE_AIR, 25)).isCloseTo(275, within(1e-9));
        // 3.75 W in 10 W: 25 + 3.75 * 25
        assertThat(CEMENT.surfaceCelsius(3.75, 10, FREE_AIR, 25)).isCloseTo(118.75, within(1e-9));
        // 5 W in a 50 W housing without heatsink: 25 + 5 * 175 / 17.5
        assertThat(ALUMINIUM.surfaceCelsius(5, 50, FREE_AIR, 25)).isCloseTo(75, within(1e-9));
    }

    @Test
    void a_rating_that_keeps_it_cool_keeps_it_cool() {
        double rating = CEMENT.ratingFor(1.05, FREE_AIR, 25, 60);

        assertThat(rating).isCloseTo(7.5, within(1e-9)); // 1.05 W * 250 K / 35 K
        assertThat(CEMENT.surfaceCelsius(1.05, rating, FREE_AIR, 25)).isCloseTo(60, within(1e-9));
    }

    /** Thresholds of ISO 13732-1 for uncoated metal (from memory): 43 at 8 h, 48 at 10 min, 51 at 1 min, 60 within 5 s. */
    @ParameterizedTest
    @CsvSource({
        "42.9, HARMLESS",
        "43, NOT_FOR_HOURS",
        "47.9, NOT_FOR_HOURS",
        "48, NOT_FOR_MINUTES",
        "51, NOT_FOR_A_MINUTE",
        "59.9, NOT_FOR_A_MINUTE",
        "60, BURNS",
        "300, BURNS"
    })
    void what_burns_skin_is_said(double celsius, Touch touch) {
        assertThat(Touch.at(celsius)).isEqualTo(touch);
    }

    /** Computed from the gauge's definition and the annealed copper standard. */
    @ParameterizedTest
    @CsvSource({"18, 20.9", "20, 33.3", "22, 53.0", "24, 84.2", "26, 133.9", "28, 212.9"})
    void copper_wire_has_the_resistance_of_its_gauge(int number, double milliohmsPerMetre) {
        WireGauge gauge = WireGauge.ofNumber(number).orElseThrow();

        assertThat(1000 * gauge.ohmsPerMetre()).isCloseTo(milliohmsPerMetre, within(0.1));
    }

    /** Rule of thumb for bundled wire (from memory): AWG 22 up to 3 A, 20 up to 5 A, 18 up to 7 A. */
    @ParameterizedTest
    @CsvSource({"0.1, AWG_22", "3, AWG_22", "3.1, AWG_20", "5.1, AWG_18", "7, AWG_18"})
    void the_wire_that_is_named_is_enough(double amperes, WireGauge gauge) {
        assertThat(WireGauge.enoughFor(amperes)).contains(gauge);
    }

    @Test
    void for_more_than_the_thickest_carries_there_is_no_wire() {
        assertThat(WireGauge.enoughFor(7.1)).isEmpty();
    }
}
