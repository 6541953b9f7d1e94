package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.judge.PassageBench.hours;
import static org.ebbwatch.judge.PassageBench.minutes;

import java.lang.reflect.Array;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Counts the state a judge holds: fields and elements of arrays. Object headers, enums and the shared procedure are left out. */
class MemoryTest {
    private static final String ALL = "org.ebbwatch.judge.";
    private static final String ESTIMATORS = ALL + "estimate.";

    private static final Map<Class<?>, Integer> BYTES = Map.of(
            boolean.class,
            1,
            byte.class,
            1,
            short.class,
            2,
            char.class,
            2,
            int.class,
            4,
            float.class,
            4,
            long.class,
            8,
            double.class,
            8);

    @Test
    void the_estimators_of_a_cell_on_its_load_hold_at_most_1664_bytes() throws Exception {
        assertThat(held(draining(), ESTIMATORS)).isBetween(1_000, 1_664);
    }

    @Test
    void the_estimators_of_a_bonded_cell_hold_at_most_2_KiB() throws Exception {
        assertThat(held(bonded(), ESTIMATORS)).isBetween(1_500, 2_048);
    }

    @Test
    void a_judge_holds_less_than_3_KiB_while_the_load_is_on() throws Exception {
        assertThat(held(draining(), ALL)).isBetween(2_000, 3_072);
    }

    @Test
    void a_judge_holds_less_than_3_and_three_quarters_KiB_in_rest_in_tie_off_and_when_parted() throws Exception {
        PassageBench bench = PassageBench.switched().resting().watch(hours(20));
        assertThat(held(bench.judge(), ALL)).isBetween(2_000, 3_840);
        assertThat(held(bonded(), ALL)).isBetween(2_000, 3_328);
        assertThat(held(PassageBench.switched().releasable().judge(), ALL)).isBetween(2_000, 3_840);
    }

    private static Judge draining() {
        return PassageBench.switched().draining().watch(minutes(30)).judge();
    }

    /** Bonded for so long that every ring is full. */
    private static Judge bonded() {
        return PassageBench.switched().tiedOff().watch(hours(20)).judge();
    }

    private static int held(Object root, String packages) throws ReflectiveOperationException {
        return held(root, packages, Collections.newSetFromMap(new IdentityHashMap<>()));
    }

    /** Of objects of the judge's own classes and their arrays; counted where the class's name begins with {@code packages}. */
    private static int held(Object object, String packages, Set<Object> seen) throws ReflectiveOperationException {
        if (object == null || !isItsOwn(object.getClass()) || !seen.add(object)) {
            return 0;
        }
        boolean counted = object.getClass().getName().startsWith(packages);
        int bytes = 0;
        for (Field field : object.getClass().getDeclaredFields()) {
            if (Modifier.isStatic(field.getModifiers())) {
                continue;
            }
            field.setAccessible(true);
            Object value = field.get(object);
            bytes += counted ? BYTES.getOrDefault(field.getType(), 4) : 0;
            if (value != null && field.getType().isArray() && counted) {
                Integer element = BYTES.get(field.getType().getComponentType());
                bytes += Array.getLength(value) * (element == null ? 4 : element);
            } else if (!field.getType().isPrimitive()) {
                bytes += held(value, packages, seen);
            }
        }
        return bytes;
    }

    private static boolean isItsOwn(Class<?> type) {
        String name = type.getName();
        return name.startsWith("org.ebbwatch.judge.")
                && !name.startsWith("org.ebbwatch.judge.procedure.")
                && !type.isEnum();
    }
}
