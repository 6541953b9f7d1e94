package org.ebbwatch.rig.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The whole tables and the inverse polynomials of the NIST ITS-90 database, read from the folder {@code nist} beside the
 * recordings.
 */
class NistTableTest {
    private static final Pattern ROW = Pattern.compile("\\s*(-?\\d+)((?:\\s+-?\\d+\\.\\d{3})+)\\s*");
    private static final double HALF_OF_THE_LAST_DIGIT = 0.0005;

    @ParameterizedTest
    @EnumSource(ThermocoupleType.class)
    void every_line_of_the_table_agrees(ThermocoupleType type) throws IOException {
        SortedMap<Integer, Double> table = table(type);
        assertThat(table).hasSize((int) type.highestCelsius() + 271);
        table.tailMap((int) ThermocoupleType.LOWEST_CELSIUS).forEach((celsius, millivolts) -> {
            assertThat(type.millivolts(celsius))
                    .as("%d degrees", celsius)
                    .isCloseTo(millivolts, within(HALF_OF_THE_LAST_DIGIT + 1e-6));
            double clamped =
                    Math.min(Math.max(millivolts, type.millivolts(-200)), type.millivolts(type.highestCelsius()));
            assertThat(type.celsius(clamped))
                    .as("%s mV", millivolts)
                    .isCloseTo(celsius, within(1.01 * HALF_OF_THE_LAST_DIGIT / type.millivoltsPerKelvin(celsius)));
        });
    }

    /** The error that NIST states for each inverse polynomial, kelvin; it is the polynomial that strays. */
    @ParameterizedTest
    @CsvSource({
        "K, 0, -200, 0, -0.02, 0.04",
        "K, 1, 0, 500, -0.05, 0.04",
        "K, 2, 500, 1372, -0.05, 0.06",
        "T, 0, -200, 0, -0.02, 0.04",
        "T, 1, 0, 400, -0.03, 0.03"
    })
    void the_inverse_polynomials_stray_from_it_by_no_more_than_they_state(
            ThermocoupleType type, int piece, double from, double to, double least, double most) throws IOException {
        double[] coefficients = inversePolynomial(type, piece);
        for (double celsius = from; celsius <= to; celsius += 0.5) {
            double millivolts = type.millivolts(celsius);
            double found = 0;
            for (int i = coefficients.length - 1; i >= 0; i--) {
                found = found * millivolts + coefficients[i];
            }
            assertThat(found - type.celsius(millivolts))
                    .as("%s degrees", celsius)
                    .isBetween(least - 0.005, most + 0.005);
        }
    }

    private static SortedMap<Integer, Double> table(ThermocoupleType type) throws IOException {
        SortedMap<Integer, Double> table = new TreeMap<>();
        int step = 0;
        for (String line : Files.readAllLines(nist("type_" + lower(type) + ".tab"), StandardCharsets.UTF_8)) {
            if (line.contains("°C") && line.contains(" 0 ")) {
                step = line.contains("-1") ? -1 : 1;
            }
            Matcher row = ROW.matcher(line);
            if (step != 0 && row.matches()) {
                int celsius = Integer.parseInt(row.group(1));
                for (String cell : row.group(2).trim().split("\\s+", -1)) {
                    table.put(celsius, Double.parseDouble(cell));
                    celsius += step;
                }
            }
        }
        return table;
    }

    private static double[] inversePolynomial(ThermocoupleType type, int piece) throws IOException {
        String json = Files.readString(nist("its90.json"), StandardCharsets.UTF_8);
        int ofType = json.indexOf("\"inverse\"", json.indexOf("\"" + type.name() + "\": {"));
        Matcher arrays = Pattern.compile("\"coeffs\":\\s*\\[([^]]*)]").matcher(json);
        int from = ofType;
        for (int i = 0; i <= piece; i++) {
            assertThat(arrays.find(from)).isTrue();
            from = arrays.end();
        }
        String[] numbers = arrays.group(1).trim().split("\\s*,\\s*", -1);
        double[] coefficients = new double[numbers.length];
        for (int i = 0; i < numbers.length; i++) {
            coefficients[i] = Double.parseDouble(numbers[i]);
        }
        return coefficients;
    }

    private static Path nist(String file) {
        String recordings = System.getProperty("recordings");
        assumeTrue(recordings != null, "the system property recordings is not set");
        Path path = Path.of(recordings).resolveSibling("nist").resolve(file);
        assumeTrue(Files.exists(path), "the NIST tables are not beside the recordings");
        return path;
    }

    private static String lower(ThermocoupleType type) {
        return type == ThermocoupleType.K ? "k" : "t";
    }
}
