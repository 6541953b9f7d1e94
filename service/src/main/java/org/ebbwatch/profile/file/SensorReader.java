package org.ebbwatch.profile.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.profile.Quantity;
import org.ebbwatch.profile.Temperature;
import org.ebbwatch.profile.Thermometer;
import org.ebbwatch.rig.sensor.Divider;
import org.ebbwatch.rig.sensor.LinearSensor;
import org.ebbwatch.rig.sensor.Ntc;
import org.ebbwatch.rig.sensor.OneWire;
import org.ebbwatch.rig.sensor.Platinum;
import org.ebbwatch.rig.sensor.Thermocouple;
import org.ebbwatch.rig.sensor.ThermocoupleType;

/** Reads how a temperature is measured. */
final class SensorReader {
    private static final List<String> TYPES =
            List.of("degrees", "ntc", "pt100", "pt1000", "thermocouple", "linear", "oneWire");
    private static final Map<String, Double> CELSIUS = Map.of("C", 1.0);
    private static final Map<String, Double> OHMS = Map.of("ohms", 1.0, "kilohms", 1e3);
    private static final Map<String, Double> RATIO = Map.of("ratio", 1.0);
    private static final Map<String, Double> MILLIVOLTS = Map.of("mV", 1.0, "V", 1e3, "uV", 1e-3);

    private static final double COLDEST = -200;
    private static final double HOTTEST = 1_372;
    private static final double USUAL_HOTTEST = 150;
    private static final double USUAL_COLDEST = -40;

    private final QuantityReader quantities;

    SensorReader(QuantityReader quantities) {
        this.quantities = quantities;
    }

    /** The temperature of a channel. */
    Optional<Temperature> temperature(Fields channel) {
        return channel.fields("celsius", quantities.keysWith("sensor")).flatMap(this::measured);
    }

    private Optional<Temperature> measured(Fields celsius) {
        List<String> keys = new ArrayList<>(List.of("type", "uncertainty"));
        keys.addAll(NtcReader.KEYS);
        keys.addAll(List.of(
                "class",
                "leadOhms",
                "couple",
                "junction",
                "junctionUncertaintyKelvin",
                "millivoltsAtZero",
                "millivoltsPerKelvin",
                "toleranceKelvin"));
        Optional<Fields> sensor = celsius.neededFields("sensor", keys, "celsius");
        return sensor.map(fields -> {
            String type = fields.neededChoice("type", TYPES, "degrees");
            try {
                return of(type, celsius, fields);
            } catch (IllegalArgumentException e) {
                fields.fault("type", "this sensor cannot be: " + e.getMessage());
                return of("degrees", celsius, fields);
            }
        });
    }

    private Temperature of(String type, Fields celsius, Fields sensor) {
        return switch (type) {
            case "ntc" -> thermistor(celsius, sensor);
            case "pt100", "pt1000" -> platinum(type, celsius, sensor);
            case "thermocouple" -> thermocouple(celsius, sensor);
            case "linear" -> linear(celsius, sensor);
            case "oneWire" ->
                temperature(
                        celsius,
                        CELSIUS,
                        "C",
                        new Thermometer.Digital(new OneWire(sensor.number("toleranceKelvin", 0, 20, 0.5))));
            default ->
                temperature(
                        celsius,
                        CELSIUS,
                        "C",
                        new Thermometer.Degrees(
                                sensor.number("lowestCelsius", COLDEST, HOTTEST, USUAL_COLDEST),
                                sensor.number("highestCelsius", COLDEST, HOTTEST, USUAL_HOTTEST),
                                sensor.neededNumber("uncertainty", 0, 20, 1)));
        };
    }

    private Temperature thermistor(Fields celsius, Fields sensor) {
        NtcReader reader = new NtcReader(sensor);
        Ntc ntc = reader.ntc();
        Optional<Divider> divider = reader.divider();
        if (divider.isEmpty()) {
            return temperature(
                    celsius, OHMS, "ohms", new Thermometer.Thermistor(ntc, sensor.number("uncertainty", 0, 1e6, 0)));
        }
        var divided = new Thermometer.DividedThermistor(
                ntc, divider.get(), sensor.number("uncertainty", 0, 1, 0), reader.fixedToleranceFraction());
        return temperature(celsius, RATIO, "ratio", divided);
    }

    private Temperature platinum(String type, Fields celsius, Fields sensor) {
        var nominal = type.equals("pt100") ? Platinum.Nominal.PT100 : Platinum.Nominal.PT1000;
        var tolerance = Platinum.Tolerance.valueOf(sensor.choice("class", List.of("A", "B"), "B"));
        var resistor = new Thermometer.Resistor(
                new Platinum(nominal, tolerance),
                sensor.number("leadOhms", 0, 100, 0),
                sensor.number("uncertainty", 0, 1_000, 0));
        return temperature(celsius, OHMS, "ohms", resistor);
    }

    private Temperature thermocouple(Fields celsius, Fields sensor) {
        var type = ThermocoupleType.valueOf(sensor.neededChoice("couple", List.of("K", "T"), "K"));
        var couple = new Thermometer.Thermocouple(
                new Thermocouple(type, sensor.number("toleranceKelvin", 0, 20, 2.5)),
                sensor.number("uncertainty", 0, 100, 0),
                sensor.number("junctionUncertaintyKelvin", 0, 20, 1));
        Quantity of = quantities.quantity(celsius, MILLIVOLTS, "mV", 1);
        Optional<Quantity> junction = sensor.neededFields(
                        "junction", quantities.keysWith(), "a thermocouple, whose terminals have a temperature too,")
                .map(fields -> quantities.quantity(fields, CELSIUS, "C", 1));
        return new Temperature(of, couple, junction);
    }

    private Temperature linear(Fields celsius, Fields sensor) {
        var line = new LinearSensor(
                sensor.neededNumber("millivoltsAtZero", -10_000, 10_000, 0),
                sensor.neededNumber("millivoltsPerKelvin", -1_000, 1_000, 10),
                sensor.neededNumber("lowestCelsius", COLDEST, HOTTEST, USUAL_COLDEST),
                sensor.neededNumber("highestCelsius", COLDEST, HOTTEST, USUAL_HOTTEST),
                sensor.number("toleranceKelvin", 0, 20, 1));
        return temperature(
                celsius, MILLIVOLTS, "mV", new Thermometer.Line(line, sensor.number("uncertainty", 0, 1_000, 0)));
    }

    private Temperature temperature(Fields celsius, Map<String, Double> units, String usual, Thermometer thermometer) {
        return new Temperature(quantities.quantity(celsius, units, usual, 1), thermometer, Optional.empty());
    }
}
