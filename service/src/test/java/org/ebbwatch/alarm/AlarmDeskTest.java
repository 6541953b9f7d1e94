package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.Standings.draining;
import static org.ebbwatch.alarm.Standings.standing;

import io.micronaut.json.tree.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.alarm.book.AlarmAnswer;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.alarm.outlet.OutletMessage;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.PassageStanding;
import org.ebbwatch.store.AlarmStepRow;
import org.ebbwatch.store.OutboxRow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AlarmDeskTest {
    private static final long HOUR = 3_600_000;
    private static final String ANNA = "Anna";

    @TempDir
    Path directory;

    private final HandClock clock = new HandClock();
    private DeskBench bench;

    @BeforeEach
    void openDesk() {
        bench = new DeskBench(directory, clock);
        bench.desk.resume(List.of());
    }

    @AfterEach
    void closeDesk() {
        bench.close();
    }

    private void restart(PassageStanding... passages) {
        bench.close();
        bench = new DeskBench(directory, clock);
        bench.desk.resume(List.of(passages));
    }

    @Test
    void an_alarm_leaves_only_after_it_is_on_disk() {
        bench.desk.changed(List.of(draining(0, FindingKind.HOT)));
        bench.deliver();
        assertThat(bench.delivered).isEmpty();
        assertThat(bench.table.living()).isEmpty();

        bench.commit();
        bench.deliver();
        assertThat(bench.told()).containsExactly("RAISED HOT");
        assertThat(bench.table.living()).hasSize(1);
    }

    @Test
    void a_message_says_what_consequence_what_to_do_and_where_to_read_it_up() {
        bench.changed(draining(3, FindingKind.HOT));
        bench.deliver();

        JsonNode body = DeskBench.json(bench.delivered.get(0));
        assertThat(body.get("messageId").getStringValue())
                .isEqualTo(bench.delivered.get(0).id().toString());
        assertThat(body.get("alarmId").getStringValue())
                .isEqualTo(bench.alarm(AlarmKind.HOT).id().toString());
        assertThat(body.get("number").getLongValue()).isEqualTo(1);
        assertThat(body.get("at").getStringValue()).isEqualTo("2026-11-25T12:00:00Z");
        assertThat(body.get("rings").getBooleanValue()).isTrue();
        assertThat(body.get("urgency").getStringValue()).isEqualTo("DANGER");
        assertThat(body.get("state").getStringValue()).isEqualTo("UNACKNOWLEDGED");
        assertThat(body.get("latched").getBooleanValue()).isTrue();
        assertThat(body.get("what").getStringValue()).isEqualTo(AlarmKind.HOT.what());
        assertThat(body.get("consequence").getStringValue()).isEqualTo(AlarmKind.HOT.consequence());
        assertThat(body.get("toDo").getStringValue()).startsWith("Keep away.");
        assertThat(body.get("cells").get(0).getStringValue()).isEqualTo("cell 3");
        JsonNode cause = body.get("cause");
        assertThat(cause.get("line").getStringValue()).isEqualTo("HOT: a line \"with\" µ.");
        assertThat(cause.get("passageId").getStringValue())
                .isEqualTo(Standings.id(3).toString());
        assertThat(cause.get("board").getStringValue()).isEqualTo("bench");
        assertThat(cause.get("channel").getIntValue()).isEqualTo(3);
        assertThat(cause.get("eventMillis").getLongValue()).isEqualTo(80_000);
        assertThat(cause.get("journalSequence").getLongValue()).isEqualTo(42);
        assertThat(cause.get("simulated").getBooleanValue()).isTrue();
        assertThat(cause.get("speed").getIntValue()).isEqualTo(60);
    }

    @Test
    void every_step_is_kept_with_who_and_when() {
        bench.changed(draining(0, FindingKind.WARMING));
        UUID id = bench.alarm(AlarmKind.WARMING).id();
        bench.pass(HOUR);
        bench.acknowledge(AlarmKind.WARMING, ANNA);
        bench.pass(HOUR);
        bench.ask(AlarmKind.WARMING, AlarmStep.SHELVED, "Ben", "the fan is on its way", 60);
        bench.pass(HOUR);

        List<AlarmStepRow> steps = bench.table.steps(id);
        assertThat(steps)
                .extracting(step -> step.sequence() + " " + step.step() + " " + step.stateBefore() + ">"
                        + step.stateAfter() + " " + step.coverBefore() + ">" + step.coverAfter() + " " + step.who()
                        + "/" + step.reason())
                .containsExactly(
                        "1 RAISED NORMAL>UNACKNOWLEDGED NONE>NONE /",
                        "2 ACKNOWLEDGED UNACKNOWLEDGED>ACKNOWLEDGED NONE>NONE Anna/",
                        "3 SHELVED ACKNOWLEDGED>ACKNOWLEDGED NONE>SHELVED Ben/the fan is on its way",
                        "4 SHELVING_ENDED ACKNOWLEDGED>UNACKNOWLEDGED SHELVED>NONE /its time is over");
        assertThat(steps.get(1).wall().millis() - steps.get(0).wall().millis()).isEqualTo(HOUR);
        assertThat(steps.get(0).causeEventMillis()).isEqualTo(80_000);
        assertThat(steps.get(0).causeLine()).isEqualTo("WARMING: a line \"with\" µ.");
        assertThat(steps.get(0).wall().quality()).isEqualTo("known");
    }

    @Test
    void a_request_that_is_done_is_on_disk_at_once_and_one_that_is_refused_leaves_no_trace() {
        bench.changed(draining(0, FindingKind.HOT));
        UUID id = bench.alarm(AlarmKind.HOT).id();

        assertThat(bench.ask(AlarmKind.HOT, AlarmStep.SHELVED, ANNA, "busy", 60))
                .isInstanceOf(AlarmAnswer.Refused.class);
        assertThat(bench.ask(AlarmKind.HOT, AlarmStep.RESET, ANNA, "", 0)).isInstanceOf(AlarmAnswer.Refused.class);
        assertThat(bench.table.steps(id)).hasSize(1);

        assertThat(bench.acknowledge(AlarmKind.HOT, ANNA)).isInstanceOf(AlarmAnswer.Done.class);
        assertThat(bench.table.steps(id)).hasSize(2);
        assertThat(bench.table.living().get(0).state()).isEqualTo("ACKNOWLEDGED");
    }

    @Test
    void a_restart_finds_the_book_as_it_was() {
        bench.changed(
                draining(0, FindingKind.HOT, FindingKind.STALLED),
                draining(1, FindingKind.SILENT),
                draining(2, FindingKind.SILENT),
                standing(3, Phase.HELD, "another cell?"));
        bench.pass(2_000);
        bench.acknowledge(AlarmKind.HELD, ANNA);
        bench.ask(AlarmKind.SILENT, AlarmStep.SHELVED, ANNA, "moving the rack", 120);
        List<AlarmView> before = bench.desk.view().alarms();
        assertThat(before).hasSize(4);

        restart(
                draining(1, FindingKind.SILENT),
                draining(2, FindingKind.SILENT),
                standing(3, Phase.HELD, "another cell?"),
                draining(0, FindingKind.HOT, FindingKind.STALLED));

        assertThat(bench.desk.view().alarms()).isEqualTo(before);
        bench.deliver();
        assertThat(bench.told()).as("nothing new is told").hasSize(6);
        bench.pass(2 * HOUR);
        assertThat(bench.alarm(AlarmKind.SILENT).cover()).isEqualTo(Cover.NONE);
    }

    @Test
    void what_came_and_went_while_the_service_was_down_is_found_at_the_start() {
        bench.changed(draining(0, FindingKind.HOT), draining(1, FindingKind.WARMING));

        restart(draining(0, FindingKind.SENSOR_FAULT));

        assertThat(bench.alarm(AlarmKind.HOT).state()).isEqualTo(AlarmState.LATCHED_UNACKNOWLEDGED);
        assertThat(bench.alarm(AlarmKind.WARMING).state()).isEqualTo(AlarmState.RETURNED_UNACKNOWLEDGED);
        assertThat(bench.alarm(AlarmKind.SENSOR_FAULT).state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
        assertThat(bench.table.living()).hasSize(3);
    }

    @Test
    void what_was_not_sent_before_a_restart_is_sent_after_it_in_order_with_the_same_ids() {
        bench.changed(draining(0, FindingKind.WARMING));
        bench.deliver();
        bench.outletAway = true;
        bench.changed(draining(0, FindingKind.WARMING, FindingKind.HOT));
        bench.changed(draining(1, FindingKind.REVERSED));
        bench.deliver();
        bench.rack.flush();
        List<OutboxRow> waiting = bench.table.unsent("test");
        assertThat(waiting).extracting(OutboxRow::number).containsExactly(2L, 3L);

        restart(draining(0, FindingKind.WARMING, FindingKind.HOT), draining(1, FindingKind.REVERSED));
        bench.changed(draining(2, FindingKind.LOAD_HOT));
        bench.deliver();

        assertThat(bench.told()).containsExactly("RAISED HOT", "RAISED REVERSED", "RAISED LOAD_HOT");
        assertThat(bench.delivered.subList(0, 2))
                .extracting(OutletMessage::id)
                .containsExactlyElementsOf(waiting.stream().map(OutboxRow::id).toList());
        assertThat(bench.delivered).extracting(OutletMessage::number).containsExactly(2L, 3L, 4L);
        bench.rack.flush();
        assertThat(bench.table.unsent("test")).isEmpty();
    }

    @Test
    void an_advisory_alarm_of_the_night_rings_in_the_morning_even_after_a_restart() {
        bench.pass(12 * HOUR);
        bench.changed(draining(0, FindingKind.OVERDUE));
        bench.deliver();
        assertThat(bench.delivered).isEmpty();
        assertThat(bench.alarm(AlarmKind.OVERDUE).told()).isFalse();

        restart(draining(0, FindingKind.OVERDUE));
        bench.pass(7 * HOUR - 1);
        bench.deliver();
        assertThat(bench.delivered).isEmpty();
        bench.pass(1);
        bench.deliver();

        assertThat(bench.told()).containsExactly("TOLD OVERDUE");
        assertThat(DeskBench.json(bench.delivered.get(0)).get("rings").getBooleanValue())
                .isTrue();
    }

    @Test
    void while_storage_is_away_alarms_leave_all_the_same_and_storage_is_one_of_them() {
        bench.storageAway = true;
        bench.changed(draining(0, FindingKind.HOT));
        bench.pass(1_000);
        bench.pass(1_000);
        bench.deliver();
        assertThat(bench.told()).containsExactly("RAISED HOT", "RAISED STORAGE_FAULT");
        assertThat(bench.table.living()).isEmpty();

        bench.storageAway = false;
        bench.pass(1_000);
        assertThat(bench.table.living()).hasSize(2);
        bench.pass(60_000);
        bench.deliver();
        assertThat(bench.told()).last().isEqualTo("RETURNED STORAGE_FAULT");
        bench.rack.flush();
        assertThat(bench.table.unsent("test")).isEmpty();
    }

    @Test
    void a_board_on_which_cells_wait_and_that_is_never_heard_is_an_alarm_until_it_is() {
        bench.desk.unheard("shed", 0);
        bench.changed();
        assertThat(bench.alarm(AlarmKind.SILENT).subject()).isEqualTo("board shed");
        assertThat(bench.alarm(AlarmKind.SILENT).tags()).isEmpty();

        bench.desk.heard("shed");
        bench.changed();
        assertThat(bench.alarm(AlarmKind.SILENT).state()).isEqualTo(AlarmState.RETURNED_UNACKNOWLEDGED);
    }

    @Test
    void the_view_shows_first_what_needs_a_person_most_and_how_the_outlets_do() {
        bench.outletAway = true;
        bench.changed(
                draining(0, FindingKind.STALLED, FindingKind.WARMING, FindingKind.HOT),
                draining(1, FindingKind.CUT_OFF));
        bench.acknowledge(AlarmKind.HOT, ANNA);
        bench.ask(AlarmKind.CUT_OFF, AlarmStep.TAKEN_OUT_OF_SERVICE, ANNA, "known", 0);
        bench.deliver();

        AlarmsView view = bench.desk.view();
        assertThat(view.alarms())
                .extracting(AlarmView::kind)
                .containsExactly(AlarmKind.WARMING, AlarmKind.STALLED, AlarmKind.HOT, AlarmKind.CUT_OFF);
        assertThat(view.alarms().get(3).putAway().orElseThrow().reason()).isEqualTo("known");
        assertThat(view.outlets()).hasSize(1);
        assertThat(view.outlets().get(0).pending()).isEqualTo(6);
        assertThat(view.outlets().get(0).lastError()).isEqualTo("away");
        assertThat(view.outlets().get(0).lastSuccessWallMillis()).isEmpty();
    }
}
