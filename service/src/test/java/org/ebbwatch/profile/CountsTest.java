package org.ebbwatch.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.sensor.Divider;
import org.ebbwatch.rig.sensor.LinearSensor;
import org.ebbwatch.rig.sensor.Ntc;
import org.ebbwatch.rig.sensor.OneWire;
import org.ebbwatch.rig.sensor.Platinum;
import org.ebbwatch.rig.sensor.PublishedNtc;
import org.ebbwatch.rig.sensor.Thermocouple;
import org.ebbwatch.rig.sensor.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CountsTest {
    private static final Thermometer THERMISTOR = new Thermometer.DividedThermistor(
            new Ntc(PublishedNtc.BETA_3435, 0.01), new Divider(10_000, Divider.Place.SENSOR_LOW), 0.002, 0.01);

    @Test
    void volts_are_microvolts_and_degrees_thousandths() {
        Reading reading = reading(new Thermometer.Degrees(-40, 125, 0.5), 3.712345, 25.1234);
        assertThat(reading).isEqualTo(new Reading(Reading.VOLTS_VALID | Reading.CELSIUS_VALID, 3_712_345, 25_123, 0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Quantity.OPEN, Double.NEGATIVE_INFINITY, 3.4e38, -3.4e38, 5.3, -0.3})
    void volts_that_no_converter_gave_are_not_valid_and_not_nought(double volts) {
        assertThat(reading(THERMISTOR, volts, 0.5).is(Reading.VOLTS_VALID)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"0, true", "-0.01, true", "0.000001, false", "4.999999, false", "5, true", "5.01, true"})
    void volts_at_an_end_of_the_range_say_so_and_stay_valid(double volts, boolean rail) {
        Reading reading = reading(THERMISTOR, volts, 0.5);
        assertThat(reading.is(Reading.VOLTS_VALID)).isTrue();
        assertThat(reading.is(Reading.VOLTS_AT_RAIL)).isEqualTo(rail);
    }

    /** Full scale over a pull-up is an open thermistor. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.9999, 0.96, Quantity.OPEN})
    void an_open_thermistor_is_open_and_not_cold(double ratio) {
        Reading reading = reading(THERMISTOR, 3.7, ratio);
        assertThat(reading.is(Reading.SENSOR_OPEN)).isTrue();
        assertThat(reading.is(Reading.CELSIUS_VALID)).isFalse();
        assertThat(reading.celsius()).isZero();
    }

    @Test
    void a_shorted_thermistor_is_at_the_rail_and_not_hot() {
        Reading reading = reading(THERMISTOR, 3.7, 0.001);
        assertThat(reading.is(Reading.CELSIUS_AT_RAIL)).isTrue();
        assertThat(reading.is(Reading.CELSIUS_VALID)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(doubles = {85, Double.NaN})
    void what_was_not_measured_is_not_valid_and_nothing_else(double celsius) {
        Reading reading = reading(new Thermometer.Digital(new OneWire(0.5)), 3.7, celsius);
        assertThat(reading.state()).isEqualTo(Reading.VOLTS_VALID);
    }

    /** Source: NIST ITS-90; 1.436 mV with the terminals at 25 degrees are 60 degrees, type K. */
    @Test
    void a_thermocouple_has_the_temperature_of_its_terminals_added() {
        var couple = new Thermometer.Thermocouple(new Thermocouple(ThermocoupleType.K, 2.5), 0.01, 1);
        var temperature = new Temperature(new Quantity(0, 1, 0), couple, Optional.of(new Quantity(1, 1, 0)));
        Description device = device(temperature);
        Reading reading = Counts.readings(device, new double[] {1.436, 25, 3.7}, channel -> false)
                .get(0);
        assertThat(Counts.SCALES.celsius(reading.celsius())).isCloseTo(60, within(0.02));
        Reading blind = Counts.readings(device, new double[] {1.436, Double.NaN, 3.7}, channel -> false)
                .get(0);
        assertThat(blind.is(Reading.CELSIUS_VALID)).isFalse();
    }

    /** Every sensor at 25 degrees, the way there and back. */
    @Test
    void every_thermometer_reads_back_what_it_gives() {
        List<Thermometer> all = List.of(
                THERMISTOR,
                new Thermometer.Degrees(-40, 125, 0.5),
                new Thermometer.Thermistor(new Ntc(PublishedNtc.BETA_3977, 0.01), 20),
                new Thermometer.Resistor(new Platinum(Platinum.Nominal.PT1000, Platinum.Tolerance.A), 0.5, 0.1),
                new Thermometer.Line(new LinearSensor(500, 10, -40, 125, 1), 5),
                new Thermometer.Digital(new OneWire(0.5)));
        for (Thermometer thermometer : all) {
            Reading reading = reading(thermometer, 3.7, thermometer.measuredAt(25));
            assertThat(Counts.SCALES.celsius(reading.celsius()))
                    .as(thermometer.toString())
                    .isCloseTo(25, within(1e-3));
        }
    }

    @Test
    void the_identity_states_the_largest_uncertainty_of_its_thermometers() {
        Description exact = device(
                new Temperature(new Quantity(0, 1, 0), new Thermometer.Degrees(-40, 125, 0.5), Optional.empty()));
        assertThat(exact.identity("D-1", 1_000).converter().celsiusMicrokelvin())
                .isEqualTo(500_000);
        Description divided = device(new Temperature(new Quantity(0, 1, 0), THERMISTOR, Optional.empty()));
        assertThat(divided.identity("D-1", 1_000).converter().celsiusMicrokelvin())
                .as("1 %% of the thermistor, 1 %% of the pull-up and 0.2 %% of the reference at 80 degrees")
                .isBetween(700_000L, 1_500_000L);
    }

    private static Reading reading(Thermometer thermometer, double volts, double measured) {
        Description device = device(new Temperature(new Quantity(0, 1, 0), thermometer, Optional.empty()));
        return Counts.readings(device, new double[] {measured, 25, volts}, channel -> false)
                .get(0);
    }

    private static Description device(Temperature temperature) {
        var channel = new ProfiledChannel(
                ChannelRole.CELL,
                Optional.of(new Quantity(2, 1, 0)),
                Optional.empty(),
                Optional.of(temperature),
                false,
                0);
        return new Description(
                "test",
                ClockKind.NONE,
                1_000,
                100,
                60_000,
                new VoltsConverter(0, 5, 0.001, 0.001),
                0,
                0,
                List.of(channel));
    }
}
