package org.ebbwatch.rig.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.ebbwatch.rig.sensor.Conversion.Fault;
import org.ebbwatch.rig.sensor.Divider.Place;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class DividerTest {
    private final Divider low = new Divider(10_000, Place.SENSOR_LOW);

    /** Source: the 103AT type's table with a pull-up of 10 kilohms and a converter of 4096 codes (computed). */
    @ParameterizedTest
    @CsvSource({
        "188500, 0.9496, 3889",
        "27280, 0.7318, 2997",
        "10000, 0.5, 2048",
        "3020, 0.2320, 950",
        "1451, 0.1267, 519",
        "973.1, 0.0887, 363"
    })
    void a_thermistor_below_its_pull_up_gives_the_known_ratios_and_codes(double ohms, double ratio, int code) {
        assertThat(low.ratio(ohms)).isCloseTo(ratio, within(0.00005));
        assertThat(Math.round(low.ratio(ohms) * 4095)).isEqualTo(code);
        assertThat(low.ohms(low.ratio(ohms))).isCloseTo(ohms, within(ohms * 1e-12));
    }

    @ParameterizedTest
    @EnumSource(Place.class)
    void an_open_sensor_is_open_and_a_shorted_one_short_on_either_side(Place place) {
        Divider divider = new Divider(10_000, place);
        Ntc ntc = new Ntc(PublishedNtc.BETA_3435, 0);
        double open = place == Place.SENSOR_LOW ? 1 : 0;
        assertThat(divider.ratio(Double.POSITIVE_INFINITY)).isEqualTo(open);
        assertThat(ntc.convert(divider.ohms(open), 0)).isEqualTo(Fault.OPEN);
        assertThat(ntc.convert(divider.ohms(1 - open), 0)).isEqualTo(Fault.SHORT);
        assertThat(ntc.convert(divider.ohms(1.01), 0)).isEqualTo(Fault.NOT_A_NUMBER);
        assertThat(ntc.convert(divider.ohms(Double.NaN), 0)).isEqualTo(Fault.NOT_A_NUMBER);
    }

    @Test
    void the_two_places_mirror_each_other() {
        Divider high = new Divider(10_000, Place.SENSOR_HIGH);
        assertThat(high.ohms(0.2)).isCloseTo(low.ohms(0.8), within(1e-9));
    }

    /** At half the reference R = R fixed, dR/dratio = R / 0.25 = 40 kilohms; 0.001 of the reference are 40 ohms. */
    @Test
    void the_uncertainty_of_the_ohms_holds_the_reading_and_the_fixed_resistor() {
        assertThat(low.expandedOhms(0.5, 0.001, 0)).isCloseTo(40, within(1e-9));
        assertThat(low.expandedOhms(0.5, 0, 0.01)).isCloseTo(2 * 100 / Math.sqrt(3), within(1e-9));
    }

    @Test
    void a_divider_without_a_resistor_is_refused() {
        assertThatThrownBy(() -> new Divider(0, Place.SENSOR_LOW)).hasMessageContaining("fixedOhms");
    }
}
