package org.ebbwatch.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Scales;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class CalibrationRuleTest {
    private static final double COUNT_VOLTS = 0.001;
    private static final double NOISE_VOLTS = 0.0005;
    private static final Meter METER = new Meter("bench meter", 0.005, 0.002);

    private static CalibrationPoint point(double shownVolts, double readVolts) {
        return new CalibrationPoint(shownVolts, readVolts, NOISE_VOLTS);
    }

    private static CalibrationRule.Line line(double shorted, double low, double high) {
        return CalibrationRule.line(METER, point(0, shorted), point(0.5, low), point(4.0, high), COUNT_VOLTS);
    }

    @Nested
    class A_straight_channel {
        private final CalibrationRule.Line line = line(0.010, 0.010 + 0.5 / 1.02, 0.010 + 4.0 / 1.02);

        @Test
        void reads_what_the_meter_shows_at_every_point() {
            Correction correction = line.correction();
            assertThat(correction.volts(0.010)).isCloseTo(0, within(1e-12));
            assertThat(correction.volts(0.010 + 0.5 / 1.02)).isCloseTo(0.5, within(1e-12));
            assertThat(correction.volts(0.010 + 4.0 / 1.02)).isCloseTo(4.0, within(1e-12));
            assertThat(line.residualVolts()).isCloseTo(0, within(1e-12));
        }

        /** Worked by hand by JCGM 100 (GUM) 4.3.7, 5.1.2, 6.2.1: see the comment beside each figure. */
        @Test
        void is_as_uncertain_as_its_budget_says() {
            Correction correction = line.correction();
            // At 0 V: 1 count 1 mV as half-width 0.5774, noise 0.5, present resolution 1.02/sqrt 12 = 0.2944:
            // u = sqrt(0.3333 + 0.25 + 0.0867) = 0.8185 mV, U = 1.637 mV.
            assertThat(correction.expandedVolts(0, COUNT_VOLTS)).isCloseTo(0.001637, within(2e-6));
            // At 4 V besides: meter 0.5 % 11.547, its 2 mV 1.1547, drift 0.1 % 2.3094 mV:
            // u = sqrt(133.33 + 1.3333 + 5.3333 + 0.6700) = 11.860 mV, U = 23.72 mV.
            assertThat(correction.expandedVolts(4, COUNT_VOLTS)).isCloseTo(0.02372, within(1e-5));
        }
    }

    @Nested
    class A_channel_that_reads_nothing_below_a_tenth_of_a_volt {
        private final Correction correction = line(0, 0.4, 3.9).correction();

        @Test
        void is_corrected_where_it_reads() {
            assertThat(correction.volts(0.4)).isCloseTo(0.5, within(1e-12));
            assertThat(correction.volts(3.9)).isCloseTo(4.0, within(1e-12));
        }

        @Test
        void is_never_taken_for_empty_where_it_cannot_see() {
            double shown = correction.volts(0);
            double expanded = correction.expandedVolts(shown, COUNT_VOLTS);
            assertThat(shown - expanded).isLessThanOrEqualTo(0);
            assertThat(shown + expanded).isGreaterThan(0.1);
        }

        @Test
        void is_known_well_again_from_the_low_point_on() {
            assertThat(correction.expandedVolts(0.5, COUNT_VOLTS)).isLessThan(0.01);
        }
    }

    /** A converter and a meter, each off within what it may, and what comes of calibrating the one by the other. */
    private record Bench(
            double offset, double gain, double blindBelow, double meterShareOff, double meterVoltsOff, Random dice) {
        private double reads(double volts) {
            double noise = 0.0002 * (dice.nextDouble() - 0.5);
            return Math.rint((offset + gain * Math.max(blindBelow, volts) + noise) / COUNT_VOLTS) * COUNT_VOLTS;
        }

        private double shows(double volts) {
            return volts + METER.share() * meterShareOff * volts + METER.volts() * meterVoltsOff;
        }

        private Correction correction() {
            return CalibrationRule.line(
                            METER,
                            point(0, reads(0)),
                            point(shows(0.5), reads(0.5)),
                            point(shows(4.0), reads(4.0)),
                            COUNT_VOLTS)
                    .correction();
        }
    }

    /** JCGM 100 (GUM), 6.3.3: k = 2 makes an interval with a level of confidence of about 95 %. */
    @Test
    void about_ninety_five_voltages_in_a_hundred_lie_within_their_uncertainty() {
        var dice = new Random(23);
        int within = 0;
        int tried = 20_000;
        for (int i = 0; i < tried; i++) {
            var bench = new Bench(
                    0.06 * dice.nextDouble() - 0.03,
                    1 + 0.1 * dice.nextDouble() - 0.05,
                    i % 2 == 0 ? 0 : 0.15 * dice.nextDouble(),
                    2 * dice.nextDouble() - 1,
                    2 * dice.nextDouble() - 1,
                    dice);
            double trueVolts = 4.2 * dice.nextDouble();
            Correction correction = bench.correction();
            double volts = correction.volts(bench.reads(trueVolts));
            within += Math.abs(volts - trueVolts) <= correction.expandedVolts(volts, COUNT_VOLTS) ? 1 : 0;
        }
        assertThat((double) within / tried).isGreaterThan(0.95);
    }

    @Property
    void no_voltage_that_a_blind_channel_cannot_see_is_told_as_less_than_it_may_be(
            @ForAll @DoubleRange(min = -0.03, max = 0.03) double offset,
            @ForAll @DoubleRange(min = -0.05, max = 0.05) double gainOff,
            @ForAll @DoubleRange(min = 0, max = 0.15) double blindBelow,
            @ForAll @DoubleRange(min = -1, max = 1) double meterShareOff,
            @ForAll @DoubleRange(min = -1, max = 1) double meterVoltsOff,
            @ForAll @DoubleRange(min = 0, max = 1) double share,
            @ForAll long seed) {
        var bench = new Bench(offset, 1 + gainOff, blindBelow, meterShareOff, meterVoltsOff, new Random(seed));
        double trueVolts = share * blindBelow;
        Correction correction = bench.correction();
        double volts = correction.volts(bench.reads(trueVolts));
        assertThat(volts + correction.expandedVolts(volts, COUNT_VOLTS)).isGreaterThanOrEqualTo(trueVolts);
    }

    @Nested
    class Nonsense_is_refused {
        @Test
        void leads_that_are_not_shorted_with_a_warning_not_to_short_a_cell() {
            assertThat(CalibrationRule.notShorted(0.142)).isEmpty();
            assertThat(CalibrationRule.notShorted(2.9))
                    .hasValueSatisfying(why ->
                            assertThat(why).contains("Never short a cell").contains("2.900 V"));
        }

        @Test
        void readings_that_scatter_or_drift() {
            assertThat(CalibrationRule.unsteady(0.001, 0.001, COUNT_VOLTS)).isEmpty();
            assertThat(CalibrationRule.unsteady(0.004, 0, COUNT_VOLTS)).isPresent();
            assertThat(CalibrationRule.unsteady(0, -0.004, COUNT_VOLTS)).isPresent();
            assertThat(CalibrationRule.unsteady(0.004, 0, 0.002)).isEmpty();
        }

        @Test
        void a_slope_that_is_far_off() {
            assertThat(CalibrationRule.misfit(point(0, 0), point(0.5, 0.5), point(4, 4)))
                    .isEmpty();
            assertThat(CalibrationRule.misfit(point(0, 0), point(0.5, 0.44), point(4, 3.5)))
                    .isPresent();
            assertThat(CalibrationRule.misfit(point(0, 0), point(0.5, 4), point(4, 4)))
                    .isPresent();
        }

        @Test
        void a_bottom_that_no_channel_has() {
            assertThat(CalibrationRule.misfit(point(0, 0), point(0.5, 0.2), point(4, 3.7)))
                    .isPresent();
        }

        @Test
        void a_meter_that_is_exact_or_worthless() {
            assertThatThrownBy(() -> new Meter("m", 0, 0)).hasMessageContaining("not nothing at all");
            assertThatThrownBy(() -> new Meter("m", 0.06, 0)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> new Meter(" ", 0.01, 0)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Nested
    class The_boards_own_scale {
        /** Offset 0.2 mV, gain 0.02 %, a count of 0.1 mV. */
        private final BoardScale fine = new BoardScale(identity(100_000, 200_000, 200));

        private boolean holds(BoardScale own, double low, double high) {
            CalibrationPoint[] points = {point(0, 0), point(0.5, low), point(4, high)};
            var line = CalibrationRule.line(METER, points[0], points[1], points[2], own.resolutionVolts());
            return CalibrationRule.ownScaleHolds(own, METER, line.correction(), points);
        }

        @Test
        void stands_where_the_meter_confirms_it_and_is_worse_than_it() {
            assertThat(holds(fine, 0.5010, 4.010)).isTrue();
        }

        @Test
        void falls_where_the_meter_disproves_it() {
            assertThat(holds(fine, 0.51, 4.08)).isFalse();
        }

        @Test
        void gives_way_where_the_meter_knows_better() {
            var coarse = new BoardScale(identity(1_000_000, 20_000_000, 20_000));
            assertThat(holds(coarse, 0.5, 4.0)).isFalse();
        }

        private static Identity identity(long nanovolts, long offsetNanovolts, long partsPerMillion) {
            return new Identity(
                    1,
                    ClockKind.CRYSTAL,
                    false,
                    false,
                    false,
                    1,
                    1_000,
                    0,
                    new Scales(nanovolts, 0, 0),
                    new Converter(0, 65_535, offsetNanovolts, partsPerMillion, 0),
                    0,
                    "EB-1",
                    "test",
                    java.util.List.of(new ChannelIdentity(ChannelRole.CELL, Set.of(Ability.VOLTS), 0)));
        }
    }
}
