package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.ebbwatch.judge.procedure.Procedure;
import org.junit.jupiter.api.Test;

/** docs/procedure.md and docs/hazards.md say what the code does. */
class ProcedureDocumentTest {
    private static final Path DOCS = Path.of("..", "docs");
    private static final List<Procedure> OTHERS = Stream.of(BuiltIn.LFP, BuiltIn.LARGE, BuiltIn.DAMAGED)
            .map(BuiltIn::procedure)
            .toList();
    private static final Pattern TEST_NAME = Pattern.compile("`(\\w+Test)`");

    @Test
    void its_table_of_findings_is_that_of_the_judge() throws IOException {
        List<String> rows = Files.readString(DOCS.resolve("procedure.md"))
                .lines()
                .filter(line -> line.matches("\\| [A-Z_]+ \\|.*"))
                .map(ProcedureDocumentTest::shortened)
                .toList();
        List<String> kinds = Arrays.stream(FindingKind.values())
                .map(kind ->
                        kind + " " + kind.urgency() + " " + kind.loadRule() + " " + (kind.isLatched() ? "YES" : "NO"))
                .toList();
        assertThat(rows).containsExactlyElementsOf(kinds);
    }

    @Test
    void it_states_the_limits_and_times_of_both_procedures() throws IOException {
        String page = Files.readString(DOCS.resolve("procedure.md"));
        Procedure careful = Procedure.careful();
        Procedure strict = Procedure.strict();
        assertThat(page)
                .contains(volts(careful.drain().limitVolts()) + " for "
                        + hours(careful.drain().holdMillis()))
                .contains("Load off for " + hours(careful.rest().leastMillis()) + " (`strict` "
                        + hours(strict.rest().leastMillis()))
                .contains("stay below " + volts(careful.rest().limitVolts()) + " (`strict` "
                        + volts(strict.rest().limitVolts()))
                .contains("watched for " + hours(careful.tieOff().watchMillis()) + " (`strict` "
                        + hours(strict.tieOff().watchMillis()))
                .contains("the last " + hours(careful.tieOff().unbrokenMillis()))
                .contains(careful.tieOff().openMillis() / 60_000 + " min open")
                .contains("within " + hours(careful.tieOff().longestOpenMillis()));
    }

    @Test
    void its_table_of_numbers_is_that_of_both_procedures() throws IOException {
        assertThat(rows("Every number", 2)).containsExactlyElementsOf(settings());
    }

    @Test
    void its_table_of_differences_names_every_one_and_no_other() throws IOException {
        assertThat(rows("Which procedure", 4)).containsExactlyElementsOf(differences());
    }

    @Test
    void it_says_when_to_choose_each_procedure() throws IOException {
        assertThat(section("Which procedure"))
                .filteredOn(line -> line.startsWith("- **"))
                .extracting(line -> line.replaceAll("- \\*\\*`(\\w+)`.*", "$1"))
                .containsExactlyElementsOf(BuiltIn.keys());
    }

    @Test
    void every_number_has_an_origin() throws IOException {
        assertThat(section("Every number"))
                .filteredOn(line -> line.startsWith("| `"))
                .isNotEmpty()
                .allSatisfy(row -> assertThat(row.split("\\|", -1)[5].strip()).containsAnyOf("practice", "real cells"));
        assertThat(section("Which procedure"))
                .filteredOn(line -> line.startsWith("| `"))
                .isNotEmpty()
                .allSatisfy(row -> assertThat(row.split("\\|", -1)[6].strip())
                        .containsAnyOf("practice", "real cells", "computed"));
    }

    @Test
    void every_test_that_the_hazards_name_exists() throws IOException {
        Matcher names = TEST_NAME.matcher(Files.readString(DOCS.resolve("hazards.md")));
        try (Stream<Path> files = Files.walk(Path.of("src", "test", "java"))) {
            List<String> tests = files.map(file -> file.getFileName().toString().replace(".java", ""))
                    .toList();
            assertThat(names.results().map(result -> result.group(1)).toList())
                    .isNotEmpty()
                    .allSatisfy(name -> assertThat(tests).contains(name));
        }
    }

    private static List<String> section(String title) throws IOException {
        String page = Files.readString(DOCS.resolve("procedure.md"));
        String after = page.substring(page.indexOf("## " + title));
        int end = after.indexOf("\n## ");
        return after.substring(0, end < 0 ? after.length() : end).lines().toList();
    }

    /** The rows of a table of settings, each with so many of its columns. */
    private static List<String> rows(String title, int columns) throws IOException {
        return section(title).stream()
                .filter(line -> line.matches("\\| `\\w+\\.\\w+` \\|.*"))
                .map(row -> row.split("\\|", -1))
                .map(cells -> cells[1].strip().replace("`", "") + ": "
                        + Arrays.stream(cells, 2, 2 + columns)
                                .map(String::strip)
                                .collect(Collectors.joining(", ")))
                .toList();
    }

    private static List<String> settings() {
        return numbers()
                .map(number ->
                        number.name() + ": " + number.of(Procedure.careful()) + ", " + number.of(Procedure.strict()))
                .toList();
    }

    private static List<String> differences() {
        return numbers()
                .filter(number -> OTHERS.stream().anyMatch(number::differs))
                .map(number -> number.name() + ": " + number.of(Procedure.careful()) + ", "
                        + OTHERS.stream()
                                .map(other -> number.differs(other) ? number.of(other) : "=")
                                .collect(Collectors.joining(", ")))
                .toList();
    }

    private static Stream<Setting> numbers() {
        return Arrays.stream(Procedure.class.getRecordComponents())
                .filter(part -> part.getType().isRecord())
                .flatMap(part ->
                        Arrays.stream(part.getType().getRecordComponents()).map(number -> new Setting(part, number)));
    }

    /** One number of a procedure. */
    private record Setting(RecordComponent part, RecordComponent number) {
        String name() {
            return part.getName() + "." + number.getName();
        }

        String of(Procedure procedure) {
            return written(number, value(part, procedure));
        }

        boolean differs(Procedure other) {
            return !of(other).equals(of(Procedure.careful()));
        }
    }

    private static Object value(RecordComponent component, Object holder) {
        try {
            return component.getAccessor().invoke(holder);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError(component.getName() + " cannot be read", e);
        }
    }

    private static String written(RecordComponent number, Object part) {
        Object value = value(number, part);
        if (value instanceof Long millis) {
            return millis % 3_600_000 == 0
                    ? hours(millis)
                    : millis % 60_000 == 0 ? millis / 60_000 + " min" : millis / 1_000 + " s";
        }
        String name = number.getName();
        String unit = name.endsWith("Volts")
                ? "V"
                : name.endsWith("Celsius") ? "degC" : name.endsWith("PerSecond") ? "K/s" : "K";
        return BigDecimal.valueOf((double) value).stripTrailingZeros().toPlainString() + " " + unit;
    }

    private static String shortened(String row) {
        String[] cells = row.split("\\|", -1);
        return Stream.of(cells[1], cells[3], cells[4], cells[5])
                .map(cell -> cell.strip().toUpperCase(Locale.ROOT))
                .reduce((before, after) -> before + " " + after)
                .orElseThrow();
    }

    private static String volts(double volts) {
        return String.format(Locale.ROOT, "%.2f V", volts);
    }

    private static String hours(long millis) {
        return millis / 3_600_000 + " h";
    }
}
