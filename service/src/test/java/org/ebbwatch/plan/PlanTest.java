package org.ebbwatch.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.LoadStep;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.PassageView;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PlanTest {
    private static final long HOUR = 3_600_000;
    private static final long EVENT = 100 * HOUR;
    private static final NightHours NIGHT = NightHours.usual(ZoneOffset.UTC);

    private final List<PassageView> passages = new ArrayList<>();
    private int speed;

    /** A passage as a line of a table. */
    private final class Cell {
        private final Phase phase;
        private boolean switched = true;
        private boolean bonded;
        private long remaining;
        private long openedHoursAgo = 50;
        private Set<Wish> asks = Set.of();
        private Optional<LoadStep> seems = Optional.empty();
        private List<Finding> findings = List.of();

        Cell(Phase phase) {
            this.phase = phase;
        }

        Cell byHand() {
            switched = false;
            return this;
        }

        Cell bonded() {
            bonded = true;
            return this;
        }

        Cell goesOn(long hours) {
            remaining = hours * HOUR;
            return this;
        }

        Cell asks(Wish wish) {
            asks = EnumSet.of(wish);
            return this;
        }

        Cell seems(LoadStep step) {
            seems = Optional.of(step);
            return this;
        }

        Cell openedJustNow() {
            openedHoursAgo = 0;
            return this;
        }

        Cell shows(FindingKind kind) {
            findings = List.of(new Finding(kind, EVENT, phase, 0, 0, "", "the finding's own line"));
            return this;
        }

        void isThere() {
            var cell = new CellCard("A", Chemistry.LAYERED_OXIDE, 2, 10, switched, false);
            long opened = EVENT - openedHoursAgo * HOUR;
            var card = new PassageCard(
                    new UUID(0, passages.size()),
                    "bench",
                    passages.size(),
                    cell,
                    Procedure.careful(),
                    opened,
                    0,
                    speed);
            passages.add(new PassageView(
                    card,
                    0,
                    phase,
                    "the reason",
                    1,
                    0,
                    0,
                    remaining,
                    false,
                    false,
                    bonded,
                    seems,
                    findings,
                    asks,
                    Set.of(),
                    List.of()));
        }
    }

    private Cell cell(Phase phase) {
        return new Cell(phase);
    }

    private Plan planAt(String moment) {
        var board = new BoardView("bench", LinkState.CONNECTED, "", "EB-1", speed, EVENT, 0, 0);
        return Plan.of(
                new RackView(List.of(board), List.of(), passages),
                NIGHT,
                Instant.parse(moment).toEpochMilli());
    }

    private static String time(long wallMillis) {
        return Instant.ofEpochMilli(wallMillis).toString();
    }

    private Errand only(String moment) {
        Plan plan = planAt(moment);
        assertThat(plan.errands()).hasSize(1);
        return plan.errands().get(0);
    }

    @ParameterizedTest
    @CsvSource({
        "CHECK_IN, ASK_PUT_ON, PUT_ON",
        "DRAIN, ASK_PUT_ON, PUT_ON",
        "DRAIN, ASK_TAKE_OFF, TAKE_OFF",
        "REST, ASK_TIE_OFF, TIE_OFF",
        "REST, ASK_METER, MEASURE",
        "TIE_OFF, ASK_METER, MEASURE",
        "TIE_OFF, ASK_RELEASE, RELEASE"
    })
    void what_a_passage_asks_for_can_be_done_now(Phase phase, Wish wish, Task task) {
        cell(phase).byHand().asks(wish).isThere();
        Errand errand = only("2026-11-25T12:00:00Z");

        assertThat(errand.task()).isEqualTo(task);
        assertThat(errand.waitsAlready()).isTrue();
        assertThat(errand.canWait()).isTrue();
        assertThat(time(errand.dueWallMillis())).isEqualTo("2026-11-25T12:00:00Z");
        assertThat(errand.why()).isNotBlank();
    }

    @Test
    void a_hand_loaded_cell_is_taken_off_after_its_hold_and_not_at_three_in_the_night() {
        cell(Phase.DRAIN).byHand().goesOn(12).isThere();
        Errand errand = only("2026-11-25T15:00:00Z");

        assertThat(errand.task()).isEqualTo(Task.TAKE_OFF);
        assertThat(errand.earliestEventMillis()).isEqualTo(EVENT + 12 * HOUR);
        assertThat(time(errand.earliestWallMillis())).isEqualTo("2026-11-26T03:00:00Z");
        assertThat(time(errand.dueWallMillis())).isEqualTo("2026-11-26T07:00:00Z");
        assertThat(errand.waitsAlready()).isFalse();
    }

    @Test
    void a_cell_the_board_switches_needs_nobody_until_it_has_held_and_rested() {
        cell(Phase.DRAIN).goesOn(3).isThere();
        Errand errand = only("2026-11-25T12:00:00Z");

        assertThat(errand.task()).isEqualTo(Task.TIE_OFF);
        assertThat(time(errand.earliestWallMillis())).isEqualTo("2026-11-26T15:00:00Z");
    }

    @Test
    void a_bonded_cell_is_parted_after_its_watch() {
        cell(Phase.TIE_OFF).bonded().goesOn(20).isThere();
        Errand errand = only("2026-11-25T12:00:00Z");

        assertThat(errand.task()).isEqualTo(Task.PART);
        assertThat(time(errand.dueWallMillis())).isEqualTo("2026-11-26T08:00:00Z");
    }

    @Test
    void a_parted_cell_is_released_after_its_last_measurement() {
        cell(Phase.TIE_OFF).goesOn(1).isThere();

        assertThat(only("2026-11-25T12:00:00Z").task()).isEqualTo(Task.RELEASE);
    }

    @ParameterizedTest
    @EnumSource(Phase.class)
    void nobody_is_asked_at_night_for_what_can_wait(Phase phase) {
        cell(phase).byHand().isThere();
        cell(phase).isThere();
        for (int minute = 0; minute < 24 * 60; minute += 15) {
            Plan plan = planAt(Instant.parse("2026-11-25T00:00:00Z")
                    .plusSeconds(minute * 60L)
                    .toString());
            assertThat(plan.errands()).allSatisfy(errand -> assertThat(NIGHT.isNight(errand.dueWallMillis()))
                    .isFalse());
            assertThat(plan.beforeMorning()).isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "HOT, HELD, DECIDE",
        "REVERSED, HELD, DECIDE",
        "LEAD_OPEN, HELD, DECIDE",
        "WARMING, TIE_OFF, LOOK",
        "SILENT, DRAIN, LOOK"
    })
    void what_rings_cannot_wait_and_is_due_at_once_even_at_night(FindingKind kind, Phase phase, Task task) {
        cell(Phase.DRAIN).goesOn(2).isThere();
        cell(phase).shows(kind).isThere();
        Plan plan = planAt("2026-11-25T03:12:00Z");

        assertThat(plan.nightNow()).isTrue();
        assertThat(plan.beforeMorning()).hasSize(1);
        Errand first = plan.errands().get(0);
        assertThat(first.task()).isEqualTo(task);
        assertThat(first.canWait()).isFalse();
        assertThat(time(first.dueWallMillis())).isEqualTo("2026-11-25T03:12:00Z");
        assertThat(first.why()).isEqualTo("the finding's own line");
    }

    @Test
    void a_cell_that_came_back_is_no_reason_to_get_up() {
        cell(Phase.DRAIN)
                .byHand()
                .asks(Wish.ASK_PUT_ON)
                .shows(FindingKind.REBOUND)
                .isThere();
        Errand errand = only("2026-11-25T03:12:00Z");

        assertThat(errand.task()).isEqualTo(Task.PUT_ON);
        assertThat(time(errand.dueWallMillis())).isEqualTo("2026-11-25T07:00:00Z");
    }

    @Test
    void a_cell_held_for_no_ringing_reason_waits_for_a_decision_in_the_morning() {
        cell(Phase.HELD).isThere();
        Errand errand = only("2026-11-25T23:00:00Z");

        assertThat(errand.task()).isEqualTo(Task.DECIDE);
        assertThat(errand.why()).isEqualTo("the reason");
        assertThat(time(errand.dueWallMillis())).isEqualTo("2026-11-26T07:00:00Z");
    }

    @Test
    void a_cell_that_is_not_proven_within_minutes_needs_a_decision() {
        cell(Phase.CHECK_IN).openedJustNow().isThere();
        assertThat(only("2026-11-25T12:00:00Z").task()).isEqualTo(Task.PUT_ON);
        passages.clear();
        cell(Phase.CHECK_IN).isThere();
        assertThat(only("2026-11-25T12:00:00Z").task()).isEqualTo(Task.DECIDE);
    }

    @Test
    void a_load_that_seems_elsewhere_is_asked_about() {
        cell(Phase.DRAIN).byHand().goesOn(5).seems(LoadStep.SEEMS_OFF).isThere();

        assertThat(only("2026-11-25T12:00:00Z").task()).isEqualTo(Task.CONFIRM);
    }

    @Test
    void what_is_over_needs_nobody() {
        cell(Phase.RELEASED).isThere();
        cell(Phase.WITHDRAWN).shows(FindingKind.HOT).isThere();

        assertThat(planAt("2026-11-25T12:00:00Z").errands()).isEmpty();
    }

    @Test
    void what_is_due_first_comes_first() {
        cell(Phase.DRAIN).goesOn(9).isThere();
        cell(Phase.REST).asks(Wish.ASK_TIE_OFF).isThere();
        cell(Phase.TIE_OFF).bonded().goesOn(2).isThere();

        assertThat(planAt("2026-11-25T12:00:00Z").errands())
                .extracting(Errand::task)
                .containsExactly(Task.TIE_OFF, Task.PART, Task.TIE_OFF);
    }

    @Test
    void at_a_simulated_speed_the_wall_clock_goes_less_far() {
        speed = 3_600;
        cell(Phase.REST).goesOn(24).isThere();

        assertThat(time(only("2026-11-25T12:00:00Z").earliestWallMillis())).isEqualTo("2026-11-25T12:00:24Z");
    }

    @Test
    void the_morning_is_that_of_the_place_on_the_day_the_clocks_go_forward() {
        var night = new NightHours(LocalTime.of(22, 0), LocalTime.of(7, 0), ZoneId.of("Europe/Berlin"));
        Plan plan = Plan.of(
                new RackView(List.of(), List.of(), List.of()),
                night,
                Instant.parse("2026-03-28T22:00:00Z").toEpochMilli());

        assertThat(plan.nightNow()).isTrue();
        assertThat(time(plan.morningWallMillis())).isEqualTo("2026-03-29T05:00:00Z");
    }

    @Test
    void where_there_is_no_night_nothing_is_put_off() {
        cell(Phase.REST).asks(Wish.ASK_TIE_OFF).isThere();
        var never = new NightHours(LocalTime.of(7, 0), LocalTime.of(7, 0), ZoneOffset.UTC);
        long three = Instant.parse("2026-11-25T03:00:00Z").toEpochMilli();
        Plan plan = Plan.of(new RackView(List.of(), List.of(), passages), never, three);

        assertThat(plan.errands().get(0).dueWallMillis()).isEqualTo(three);
    }
}
