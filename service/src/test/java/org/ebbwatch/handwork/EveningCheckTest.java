package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.ebbwatch.alarm.AlarmRequest;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.evening.EveningCheck;
import org.ebbwatch.evening.EveningCheck.State;
import org.ebbwatch.evening.EveningReply;
import org.ebbwatch.evening.rule.Matter;
import org.ebbwatch.evening.rule.Point;
import org.ebbwatch.evening.rule.Proof;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** The evening check at a simulated rack: it passes a sound one, finds what is planted, and leaves every load as it was. */
class EveningCheckTest extends EveningBench {
    private void found(Proof proof, Matter matter, String about, String seen) {
        EveningCheck check = check();
        Point point = point(check, matter, about);
        assertThat(point.proof()).as(point.toString()).isEqualTo(proof);
        assertThat(point.seen()).contains(seen);
        assertThat(point.toDo()).isNotBlank();
        assertThat(check.verdict()).isIn(proof, Proof.FAILED);
    }

    private void failed(Matter matter, String about, String seen) {
        found(Proof.FAILED, matter, about, seen);
    }

    @Nested
    class A_sound_rack {
        @Test
        void passes_and_its_loads_are_as_before_and_stay_so() {
            EveningCheck check = check();

            assertThat(open(check)).isEmpty();
            assertThat(check.verdict()).isEqualTo(Proof.PASSED);
            assertThat(check.passages()).hasSize(3);
            assertThat(point(check, Matter.LOAD, "A").seen()).contains("while open");
            assertThat(point(check, Matter.LOAD, "B").seen()).contains("drew since it went on", "hands put it on");
            assertThat(point(check, Matter.LEAD, "C").seen()).contains("attached");
            rack.pass(2 * 60 * MINUTE);
            assertThat(cell(SWITCHED).phase()).isEqualTo(Phase.DRAIN);
            assertThat(cell(SWITCHED).loadOn()).isTrue();
            assertThat(rack.alarms().alarms()).isEmpty();
        }

        @Test
        void opened_one_load_once_and_no_other() {
            check();

            List<String> journal = rack.journal(cell(SWITCHED).id());
            assertThat(journal).filteredOn(line -> line.contains("Announced")).hasSize(1);
            assertThat(cell(BY_HAND).loadOn()).isTrue();
            assertThat(cell(FRESH).loadOn()).isFalse();
        }

        @Test
        void is_kept_with_its_points_over_a_restart() {
            EveningCheck check = check();
            rack.close();
            rack = rack.again(records);

            EveningCheck kept = rack.evening(check.id()).orElseThrow();
            assertThat(kept.state()).isEqualTo(State.ENDED);
            assertThat(kept.points()).isEqualTo(check.points());
            assertThat(kept.passages()).containsExactlyInAnyOrderElementsOf(check.passages());
            assertThat(rack.evenings()).containsExactly(kept);
        }
    }

    @Nested
    class It_finds {
        @Test
        void a_welded_contact() {
            fault(SWITCHED, FaultKind.LOAD_STUCK);
            failed(Matter.LOAD, "A", "the cell did not answer");
        }

        @Test
        void a_switch_that_the_board_cannot_open() {
            rack.breakSwitches(false);
            failed(Matter.LOAD, "A", "asked to open");
        }

        @Test
        void a_load_that_does_not_close_again() {
            rack.breakSwitches(true);
            failed(Matter.LOAD, "A", "");
        }

        @Test
        void a_sensor_that_is_open() {
            fault(FRESH, FaultKind.THERMISTOR_OPEN);
            failed(Matter.SENSOR, "C", "");
        }

        @Test
        void a_sensor_that_is_frozen() {
            fault(FRESH, FaultKind.FROZEN_CELSIUS);
            found(Proof.NOT_PROVEN, Matter.TOUCH, "C", "it did not rise");
        }

        @Test
        void a_lead_that_came_off() {
            fault(FRESH, FaultKind.OPEN_LEAD);
            failed(Matter.LEAD, "C", "no cell is attached");
        }

        @Test
        void a_board_that_is_silent() {
            boardFault(FaultKind.SILENT);
            rack.pass(60 * 60 * MINUTE);
            failed(Matter.PORT, QuietRack.BOARD, "silent");
        }

        @Test
        void a_line_that_was_lost() {
            rack.replug();
            failed(Matter.PORT, QuietRack.BOARD, "link lost 1 times");
        }

        @Test
        void a_line_full_of_noise() {
            rack.hands()
                    .addFault(Fault.onBoard(FaultKind.CORRUPT_BYTES, Trigger.at(0))
                            .with(Map.of("perMillion", 600.0)));
            failed(Matter.PORT, QuietRack.BOARD, "% damaged");
        }

        @Test
        void a_board_whose_clock_runs_wrong() {
            rack.findTheClockOdd();
            failed(Matter.BOARD_CLOCK, QuietRack.BOARD, "1 % off");
        }

        @Test
        void a_host_that_does_not_know_the_time() {
            rack.loseTheTime();
            found(Proof.NOT_PROVEN, Matter.HOST_CLOCK, "", "neither a time service");
        }

        @Test
        void an_outlet_that_is_down() {
            outletAway = true;
            failed(Matter.OUTLET, "telephone", "the network is away");
        }

        @Test
        void a_disk_that_is_nearly_full() {
            rack.leaveRoom(100L << 20);
            failed(Matter.STORAGE, "", "100 MiB free");
        }

        @Test
        void a_room_that_is_too_warm() {
            rack.hands()
                    .addFault(Fault.onBoard(FaultKind.AMBIENT_RISE, Trigger.at(0))
                            .with(Map.of("kelvin", 20.0, "tauMinutes", 1.0)));
            rack.pass(10 * MINUTE);
            failed(Matter.AMBIENT, QuietRack.BOARD, "degC");
        }

        @Test
        void an_alarm_nobody_has_acknowledged() {
            fault(FRESH, FaultKind.THERMISTOR_OPEN);
            rack.pass(5 * MINUTE);
            failed(Matter.ALARM, "SENSOR_FAULT C", "nobody acknowledged it");
        }

        @Test
        void a_ringing_alarm_that_was_put_away() {
            fault(FRESH, FaultKind.THERMISTOR_OPEN);
            rack.pass(5 * MINUTE);
            AlarmView alarm = rack.alarms().alarms().get(0);
            rack.ask(
                    new AlarmRequest(
                            alarm.id(), alarm.sequence(), AlarmStep.SHELVED, "Ben", "a new one is ordered", 600),
                    "shelving-it");
            failed(Matter.ALARM, "SENSOR_FAULT C", "SHELVED");
        }

        @Test
        void a_sensor_nobody_held() {
            UUID id = begin();
            rack.pass(MINUTE);
            EveningCheck check = ((EveningReply.Done) rack.finishEvening(id)).check();
            assertThat(point(check, Matter.TOUCH, "A").proof()).isEqualTo(Proof.NOT_PROVEN);
            assertThat(check.verdict()).isNotEqualTo(Proof.PASSED);
        }
    }

    @Nested
    class Its_test_alarm {
        @Test
        void leaves_as_any_alarm_does_and_ends_with_the_check() {
            check();

            assertThat(delivered).isNotEmpty();
            assertThat(delivered.get(0).body()).contains("\"kind\":\"TEST\"", "\"rings\":true");
            assertThat(rack.alarms().alarms()).isEmpty();
        }

        @Test
        void may_be_acknowledged_as_any_alarm_is() {
            UUID id = begin();
            rack.deliver();
            AlarmView test = rack.alarms().alarms().stream()
                    .filter(alarm -> alarm.kind() == AlarmKind.TEST)
                    .findFirst()
                    .orElseThrow();
            rack.ask(new AlarmRequest(test.id(), test.sequence(), AlarmStep.ACKNOWLEDGED, "Ben", "", 0), "i-heard-it");
            rack.pass(MINUTE);

            Point point = point(rack.evening(id).orElseThrow(), Matter.OUTLET, "telephone");
            assertThat(point.proof()).as(point.toString()).isEqualTo(Proof.PASSED);
            assertThat(point.seen()).isEqualTo("Ben had it");
        }
    }

    @Nested
    class One_at_a_time {
        @Test
        void another_is_refused_and_the_same_request_gives_the_same_check() {
            UUID id = begin();

            assertThat(rack.startEvening("Ben", 0, "another-request")).isInstanceOf(EveningReply.Busy.class);
            rack.finishEvening(id);
            EveningReply again = rack.startEvening("Ben", 0, "another-request");
            EveningReply repeated = rack.startEvening("Ben", 0, "another-request");
            assertThat(((EveningReply.Done) repeated).check().id())
                    .isEqualTo(((EveningReply.Done) again).check().id())
                    .isNotEqualTo(id);
        }

        @Test
        void nothing_is_added_to_one_that_is_over_or_that_never_was() {
            UUID id = begin();
            rack.finishEvening(id);

            assertThat(rack.heardBy(id, "telephone", "Anna")).isInstanceOf(EveningReply.Over.class);
            assertThat(rack.heardBy(new UUID(1, 2), "telephone", "Anna")).isInstanceOf(EveningReply.Unknown.class);
            assertThat(act(FRESH, Act.PUT_ON)).isNotNull();
        }
    }
}
