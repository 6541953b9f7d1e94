package org.ebbwatch.profile.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.ebbwatch.acquire.LineFormat;
import org.ebbwatch.profile.modbus.ModbusProfile;
import org.ebbwatch.profile.text.DecimalMark;
import org.ebbwatch.profile.text.Separator;
import org.ebbwatch.profile.text.TextProfile;
import org.ebbwatch.rack.RackFileFaulty;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ProfileFileTest {
    private static final String TEXT =
            """
            protocol: text
            intervalMillis: 1000
            columns: [u, t]
            converter: {lowestVolts: 0, highestVolts: 5, offsetMillivolts: 2, gainPercent: 0.3}
            channels:
              - role: cell
                volts: {column: u}
                celsius: {column: t, sensor: {type: degrees, uncertainty: 1}}
            """;
    private static final String MODBUS =
            """
            protocol: modbusTcp
            intervalMillis: 1000
            converter: {lowestVolts: 0, highestVolts: 5, offsetMillivolts: 2, gainPercent: 0.3}
            channels:
              - role: cell
                load: {unitId: 1, coil: 0}
                volts: {unitId: 1, input: 0, type: int16}
              - role: cell
                load: {unitId: 1, coil: 1}
                volts: {unitId: 1, input: 1, type: int16}
            """;

    @Test
    void what_is_left_out_has_its_usual_value() throws RackFileFaulty {
        TextProfile text = (TextProfile) ProfileFile.parse(TEXT, "profile.yml");
        assertThat(text.serialNumber()).isEmpty();
        assertThat(text.format()).isEqualTo(LineFormat.EIGHT_N_ONE);
        assertThat(text.separator()).isEqualTo(Separator.COMMA);
        assertThat(text.decimal()).isEqualTo(DecimalMark.POINT);
        ModbusProfile modbus = (ModbusProfile) ProfileFile.parse(MODBUS, "profile.yml");
        assertThat(modbus.timeoutMillis()).isEqualTo(300);
        assertThat(modbus.retries()).isEqualTo(1);
        assertThat(modbus.mostGap()).isZero();
        assertThat(modbus.description().hostTimeoutMillis()).isZero();
        assertThat(modbus.loads().get(1).sense())
                .isEqualTo(modbus.loads().get(1).coil());
    }

    /** 0.3 % and two resistors of 0.1 % that halve: 2 x sqrt(2) x 0.05 % / sqrt(3) = 0.0816 %, together 0.311 %. */
    @Test
    void a_divider_multiplies_volts_and_adds_to_the_uncertainty() throws RackFileFaulty {
        String halved = TEXT.replace(
                "{column: u}",
                "{column: u, unit: mV, divider: {upperOhms: 10000, lowerOhms: 10000, tolerancePercent: 0.1}}");
        TextProfile text = (TextProfile) ProfileFile.parse(halved, "profile.yml");
        assertThat(text.description().channels().get(0).volts().orElseThrow().scale())
                .isEqualTo(0.002);
        assertThat(text.description().converter().gainFraction()).isCloseTo(0.00311, within(5e-6));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "protocol: text           | protocol: csv            | 1: protocol \"csv\" is not known; protocol is one of",
                "intervalMillis: 1000     | intervallMillis: 1000    | 2: intervallMillis is not a key of a profile; did you",
                "intervalMillis: 1000     | intervalMillis: 99       | 2: intervalMillis \"99\" is not allowed; interval",
                "columns: [u, t]          | columns: [u, u]          | 3: the column u is named twice",
                "columns: [u, t]          | columns: [u, x]          | 8: column \"t\" is none of the columns u, x",
                "columns: [u, t]          | decimal: comma           | 3: decimal is not comma where the separator is",
                "columns: [u, t]          | retries: 1               | 3: retries is not a key of a profile with protocol",
                "highestVolts: 5          | highestVolts: 0          | 4: highestVolts is above lowestVolts",
                "{column: u}              | {column: u, unit: kV}    | 7: unit \"kV\" is not known; unit is one of V, mV, uV",
                "{column: u}              | {column: u, scale: 0}    | 7: scale is not 0",
                "volts: {column: u}       | load: {coil: 1}          | 7: a device that only prints switches no load",
                "type: degrees            | type: ds18b20            | 8: type \"ds18b20\" is not known; type is one of",
                "uncertainty: 1           | lowestCelsius: 0         | 8: sensor lacks uncertainty",
                "type: degrees            | type: thermocouple       | 8: a thermocouple, whose terminals have a temp",
                "type: degrees            | type: ntc                | 8: sensor lacks errorKelvin"
            })
    void a_fault_is_told_with_its_line_and_what_is_allowed(String right, String wrong, String told) {
        assertThat(faults(TEXT.replace(right.strip(), wrong.strip())))
                .anySatisfy(fault -> assertThat(fault).startsWith("profile.yml:" + told.strip()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "coil: 1              | coil: 0                   | 9: the coil 0 of unit 1 switches another channel's load",
                "input: 1, type       | type                      | 10: say once where it stands, by holding or input",
                "input: 1, type       | input: 1, holding: 1, type| 10: say once where it stands, by holding or input",
                "input: 1, type       | input: 65535, type        | 10: input \"65535\" is not allowed",
                "type: int16}         | type: int8}               | 7: type \"int8\" is not known",
                "intervalMillis: 1000 | separator: tab            | 2: separator is not a key of a profile with protocol"
            })
    void a_fault_of_a_modbus_profile_too(String right, String wrong, String told) {
        assertThat(faults(MODBUS.replace(right.strip(), wrong.strip())))
                .anySatisfy(fault -> assertThat(fault).startsWith("profile.yml:" + told.strip()));
    }

    static Stream<String> sensors() {
        return Stream.of(
                "{type: ntc, curve: beta3977, tolerancePercent: 1}",
                "{type: ntc, ohmsAt25: 10000, beta: 3950, errorKelvin: 1, lowestCelsius: 0, highestCelsius: 85}",
                "{type: ntc, steinhartHart: [8.864771e-4, 2.515336e-4, 1.930454e-7], errorKelvin: 0.1,"
                        + " lowestCelsius: -20, highestCelsius: 85, pullDownOhms: 10000}",
                "{type: pt100, class: A}",
                "{type: pt1000, leadOhms: 1, uncertainty: 0.5}",
                "{type: thermocouple, couple: K, junction: {column: u}}",
                "{type: linear, millivoltsAtZero: 500, millivoltsPerKelvin: 10, lowestCelsius: -20, highestCelsius: 120}",
                "{type: oneWire}");
    }

    @ParameterizedTest
    @MethodSource("sensors")
    void every_sensor_can_be_named(String sensor) throws RackFileFaulty {
        String text = TEXT.replace("{type: degrees, uncertainty: 1}", sensor);
        TextProfile profile = (TextProfile) ProfileFile.parse(text, "profile.yml");
        assertThat(profile.description().channels().get(0).temperature()).isPresent();
    }

    private static List<String> faults(String text) {
        return catchThrowableOfType(RackFileFaulty.class, () -> ProfileFile.parse(text, "profile.yml"))
                .faults();
    }
}
