package org.ebbwatch.judge.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ProcedureTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "version                     | 0        | a version starts at 1",
                "name                        | ' '      | a procedure has a name",
                "drain.limitVolts            | 0        | the drain limit must lie between 0 V and the proof",
                "drain.limitVolts            | NaN      | the drain limit must lie between 0 V and the proof",
                "drain.limitVolts            | 0.6      | the drain limit may not be above the rested limit",
                "drain.provenVolts           | 2.6      | a proof above 2.5 V",
                "drain.provenVolts           | 0.4      | the rested limit may not be above the proof",
                "drain.holdMillis            | 0        | the hold must fit into the longest drain",
                "drain.longestMillis         | 43200000 | the hold must fit into the longest drain",
                "rest.limitVolts             | 1.1      | not empty by anyone's rule",
                "rest.limitVolts             | NaN      | not empty by anyone's rule",
                "rest.recoveryMillis         | 86400000 | the recovery must be seen within the rest",
                "tieOff.watchMillis          | 0        | watch times must be above 0",
                "tieOff.unbrokenMillis       | 86400001 | the unbroken end of the watch",
                "tieOff.longestOpenMillis    | 3599999  | the longest opening",
                "tieOff.looseVolts           | 0        | a bond has some voltage",
                "tieOff.looseVolts           | 0.5      | it must be loose before that",
                "heat.warmCelsius            | 60       | warming must come before hot",
                "heat.hotCelsius             | 45       | warming must come before hot",
                "heat.hotCelsius             | 80       | hot must come before 80 degC",
                "heat.hotCelsius             | NaN      | warming must come before hot",
                "heat.tieOffHotKelvin        | 3        | in tie-off too, warming must come before hot",
                "heat.tieOffHotCelsius       | 61       | a bonded cell may not be hotter",
                "heat.tieOffHotCelsius       | 35       | a room that is too warm must be told before",
                "heat.ambientCelsius         | 45       | a room that is too warm must be told before",
                "heat.ambientCelsius         | NaN      | a room that is too warm must be told before",
                "heat.tieOffWarmKelvin       | 0        | no more in tie-off than in rest",
                "heat.restWarmKelvin         | 2.9      | no more in tie-off than in rest",
                "heat.restWarmKelvin         | 15.1     | no more in tie-off than in rest",
                "heat.drainWarmKelvin        | NaN      | no more in tie-off than in rest",
                "heat.drainWarmKelvin        | 61       | no cell rises so far",
                "heat.hotKelvinPerSecond     | 0        | complete within ten seconds",
                "heat.hotKelvinPerSecond     | 0.19     | complete within ten seconds",
                "heat.hotRiseKelvin          | 5.1      | complete within ten seconds",
                "heat.hotRiseKelvin          | -1       | complete within ten seconds",
                "heat.withoutDummyKelvin     | -0.1     | without a dummy cell",
                "heat.withoutDummyKelvin     | 5.1      | without a dummy cell",
                "heat.bankCelsius            | 35       | a resistor bank's limit",
                "heat.bankCelsius            | Infinity | a resistor bank's limit",
                "heat.projectionMillis       | 0        | ahead of time",
                "heat.calmKelvin             | 0        | a cell that is warming is not calm",
                "heat.calmKelvin             | 5.1      | a cell that is warming is not calm",
                "heat.calmMillis             | 0        | calm takes time",
                "plausible.lowestVolts       | -0.1     | a reversed cell must be believed",
                "plausible.lowestVolts       | -61      | a reversed cell must be believed",
                "plausible.highestVolts      | 4.4      | a full cell must be believed",
                "plausible.highestVolts      | Infinity | a full cell must be believed",
                "plausible.lowestCelsius     | 0        | a cold room must be believed",
                "plausible.lowestCelsius     | -127     | a cold room must be believed",
                "plausible.highestCelsius    | 60       | a hot cell must be believed",
                "plausible.highestCelsius    | 1000     | must not be believed",
                "plausible.cellCoolingMillis | 179999   | a sensor that has left its cell",
                "plausible.pauseMillis       | 0        | a pause and a silence take time",
                "plausible.silentMillis      | 0        | a pause and a silence take time"
            })
    void a_set_that_contradicts_itself_is_refused_with_the_reason(String setting, String value, String why) {
        assertThatThrownBy(() -> careful(setting, value))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(why);
    }

    @ParameterizedTest
    @CsvSource({
        "drain.limitVolts, 0.5",
        "rest.limitVolts, 1.0",
        "heat.warmCelsius, 59.9",
        "heat.hotKelvinPerSecond, 0.2",
        "heat.hotRiseKelvin, 5",
        "heat.calmKelvin, 5",
        "plausible.cellCoolingMillis, 180000"
    })
    void a_set_that_just_holds_together_is_taken(String setting, String value) {
        assertThatCode(() -> careful(setting, value)).doesNotThrowAnyException();
    }

    /** Directions: a lower limit, a smaller rise or a narrower range protects better, and so does a longer time. */
    @ParameterizedTest
    @EnumSource(BuiltIn.class)
    void no_procedure_is_looser_than_the_careful_one(BuiltIn other) {
        Procedure careful = Procedure.careful();
        Procedure its = other.procedure();
        for (RecordComponent part : Procedure.class.getRecordComponents()) {
            if (!part.getType().isRecord()) {
                continue;
            }
            for (RecordComponent number : part.getType().getRecordComponents()) {
                double here = ((Number) value(number, value(part, its))).doubleValue();
                double there = ((Number) value(number, value(part, careful))).doubleValue();
                switch (number.getName()) {
                    // Holds and rests that take longer need more time before a person is called (docs/procedure.md).
                    case "longestMillis" -> assertThat(here).isGreaterThanOrEqualTo(there);
                    case "provenVolts", "recoveryMillis", "longestOpenMillis", "silentMillis" ->
                        assertThat(here).as(number.getName()).isEqualTo(there);
                    case "pauseMillis" -> assertThat(here).isLessThanOrEqualTo(there);
                    default -> {
                        if (number.getType() == long.class || number.getName().startsWith("lowest")) {
                            assertThat(here).as(number.getName()).isGreaterThanOrEqualTo(there);
                        } else {
                            assertThat(here).as(number.getName()).isLessThanOrEqualTo(there);
                        }
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(BuiltIn.class)
    void a_procedure_is_called_what_it_is_chosen_by(BuiltIn rule) {
        assertThat(rule.procedure().name()).isEqualTo(rule.key());
        assertThat(BuiltIn.ofKey(rule.key())).contains(rule);
    }

    @Test
    void three_holds_and_their_rests_fit_into_the_longest_drain() {
        assertThat(BuiltIn.values()).allSatisfy(rule -> {
            Procedure its = rule.procedure();
            long holds = (1 + 2 + 4) * its.drain().holdMillis();
            assertThat(its.drain().longestMillis())
                    .isGreaterThan(holds + 3 * its.rest().leastMillis());
        });
    }

    @ParameterizedTest
    @CsvSource({
        "LFP, LAYERED_OXIDE, 2.6, iron phosphate",
        "LARGE, LAYERED_OXIDE, 1.99, 2 Ah and more",
        "LARGE, LFP, 0.5, 2 Ah and more"
    })
    void a_procedure_that_does_not_fit_says_why_and_what_to_take(
            BuiltIn rule, Chemistry chemistry, double ampereHours, String why) {
        assertThat(rule.refusal(chemistry, ampereHours).orElseThrow()).contains(why, "take careful, strict");
    }

    @ParameterizedTest
    @CsvSource({
        "CAREFUL, LAYERED_OXIDE, 2.6, ''",
        "CAREFUL, LFP, 2.6, procedure lfp",
        "STRICT, LFP, 2.6, ''",
        "CAREFUL, LFP, 100, procedure large",
        "LFP, LFP, 5, procedure large",
        "LARGE, LFP, 100, ''",
        "DAMAGED, LFP, 100, ''"
    })
    void a_procedure_that_does_for_now_names_the_one_made_for_the_cell(
            BuiltIn rule, Chemistry chemistry, double ampereHours, String other) {
        assertThat(rule.refusal(chemistry, ampereHours)).isEmpty();
        assertThat(rule.advice(chemistry, ampereHours).orElse("")).contains(other);
        assertThat(rule.advice(chemistry, ampereHours).isEmpty()).isEqualTo(other.isEmpty());
    }

    /** The careful procedure with one setting changed. */
    private static Procedure careful(String setting, String value) throws Throwable {
        int point = setting.indexOf('.');
        if (point < 0) {
            return with(Procedure.careful(), setting, value);
        }
        String part = setting.substring(0, point);
        RecordComponent component = component(Procedure.class, part);
        Record changed = with((Record) value(component, Procedure.careful()), setting.substring(point + 1), value);
        return with(Procedure.careful(), part, changed);
    }

    @SuppressWarnings("unchecked")
    private static <R extends Record> R with(R record, String name, Object value) throws Throwable {
        RecordComponent[] components = record.getClass().getRecordComponents();
        component(record.getClass(), name);
        Object[] values = Arrays.stream(components)
                .map(each -> each.getName().equals(name) ? as(each.getType(), value) : value(each, record))
                .toArray();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        try {
            return (R) record.getClass().getDeclaredConstructor(types).newInstance(values);
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    private static RecordComponent component(Class<?> type, String name) {
        return Arrays.stream(type.getRecordComponents())
                .filter(each -> each.getName().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Object as(Class<?> type, Object value) {
        if (!(value instanceof String text)) {
            return value;
        } else if (type == double.class) {
            return Double.valueOf(text);
        } else if (type == long.class) {
            return Long.valueOf(text);
        }
        return type == int.class ? Integer.valueOf(text) : text;
    }

    private static Object value(RecordComponent component, Object holder) {
        try {
            return component.getAccessor().invoke(holder);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError(component.getName() + " cannot be read", e);
        }
    }
}
