package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.function.Predicate;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class AlarmKindTest {

    @ParameterizedTest
    @EnumSource(FindingKind.class)
    void every_finding_has_its_alarm_and_that_is_as_urgent(FindingKind finding) {
        assertThat(AlarmKind.of(finding).name()).isEqualTo(finding.name());
        assertThat(AlarmKind.of(finding).urgency()).isEqualTo(finding.urgency());
    }

    @Test
    void alarms_that_come_from_no_finding_ring_but_a_held_cell_can_wait() {
        assertThat(kinds(kind -> Arrays.stream(FindingKind.values())
                        .noneMatch(finding -> finding.name().equals(kind.name()))))
                .containsExactlyInAnyOrder(
                        AlarmKind.SMOKE,
                        AlarmKind.MAINS_LOST,
                        AlarmKind.HELD,
                        AlarmKind.STORAGE_FAULT,
                        AlarmKind.FLOOD,
                        AlarmKind.TEST)
                .allSatisfy(kind -> assertThat(kind.urgency())
                        .isEqualTo(
                                switch (kind) {
                                    case SMOKE -> Urgency.DANGER;
                                    case HELD -> Urgency.ADVISORY;
                                    default -> Urgency.RINGING;
                                }));
    }

    @Test
    void dangers_are_latched_and_fire_and_a_flood_stay_in_view() {
        assertThat(kinds(AlarmKind::isLatched))
                .containsExactlyInAnyOrder(AlarmKind.HOT, AlarmKind.SMOKE, AlarmKind.REVERSED, AlarmKind.LOAD_HOT);
        assertThat(kinds(kind -> !kind.mayBeCovered()))
                .containsExactlyInAnyOrder(AlarmKind.HOT, AlarmKind.SMOKE, AlarmKind.FLOOD);
    }

    @ParameterizedTest
    @EnumSource(AlarmKind.class)
    void every_alarm_says_what_is_the_matter_what_comes_of_it_and_what_to_do(AlarmKind kind) {
        assertThat(kind.what()).endsWith(".").hasSizeBetween(10, 80);
        assertThat(kind.consequence()).endsWith(".").hasSizeBetween(15, 200);
        assertThat(kind.toDo()).endsWith(".").hasSizeBetween(15, 200);
    }

    @Test
    void fire_tells_people_to_keep_away_first() {
        assertThat(AlarmKind.SMOKE.toDo()).startsWith("Keep away. Clear the room. Follow your local emergency plan.");
        assertThat(AlarmKind.HOT.toDo()).startsWith("Keep away. Clear the room. Follow your local emergency plan.");
    }

    private static AlarmKind[] kinds(Predicate<AlarmKind> which) {
        return Arrays.stream(AlarmKind.values()).filter(which).toArray(AlarmKind[]::new);
    }
}
