package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ebbwatch.alarm.Standings.draining;

import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.alarm.AlarmReply.Done;
import org.ebbwatch.alarm.AlarmReply.KeyUsed;
import org.ebbwatch.alarm.AlarmReply.Refused;
import org.ebbwatch.alarm.AlarmReply.Stale;
import org.ebbwatch.alarm.AlarmReply.Unknown;
import org.ebbwatch.alarm.book.AlarmAnswer.Why;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.passage.Happening;
import org.ebbwatch.passage.Happenings.Numbered;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class AlarmClerkTest {
    private static final String ANNA = "Anna";
    private static final String KEY = "one-and-the-same";

    @TempDir
    Path directory;

    private DeskBench bench;

    @BeforeEach
    void a_cell_is_hot_and_another_warms() {
        bench = new DeskBench(directory, new HandClock());
        bench.desk.resume(List.of());
        bench.changed(draining(0, FindingKind.HOT), draining(1, FindingKind.WARMING));
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private AlarmRequest acknowledge(AlarmKind kind) {
        return bench.request(kind, AlarmStep.ACKNOWLEDGED, ANNA, "", 0);
    }

    private List<Happening> happened() {
        return bench.happenings.since(0, 100).stream().map(Numbered::happening).toList();
    }

    @Test
    void a_step_and_its_receipt_are_on_disk_together() {
        AlarmRequest request = acknowledge(AlarmKind.HOT);

        assertThat(bench.clerk.ask(request, KEY)).isInstanceOf(Done.class);

        assertThat(bench.table.steps(request.alarm())).hasSize(2);
        assertThat(bench.rack.receipts().findOfAlarm(KEY)).hasValueSatisfying(row -> {
            assertThat(row.alarm()).isEqualTo(request.alarm());
            assertThat(row.sequence()).isEqualTo(2);
            assertThat(row.who()).isEqualTo(ANNA);
        });
    }

    @Test
    void the_same_request_is_answered_again_and_done_once_also_while_the_records_are_away() {
        AlarmRequest request = acknowledge(AlarmKind.HOT);
        bench.storageAway = true;
        Done first = (Done) bench.clerk.ask(request, KEY);
        assertThat(first.onDisk()).isFalse();
        assertThat(first.receipt().state()).isEqualTo(AlarmState.ACKNOWLEDGED);

        Done again = (Done) bench.clerk.ask(request, KEY);
        assertThat(again.receipt()).isEqualTo(first.receipt());
        assertThat(bench.alarm(AlarmKind.HOT).sequence()).isEqualTo(2);

        bench.storageAway = false;
        bench.commit();
        assertThat(((Done) bench.clerk.ask(request, KEY)).onDisk()).isTrue();
        assertThat(bench.table.steps(request.alarm())).hasSize(2);
    }

    @Test
    void a_key_of_another_request_is_refused() {
        bench.clerk.ask(acknowledge(AlarmKind.HOT), KEY);

        assertThat(bench.clerk.ask(acknowledge(AlarmKind.WARMING), KEY)).isEqualTo(new KeyUsed(KEY));
        assertThat(bench.alarm(AlarmKind.WARMING).state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    }

    @Test
    void what_was_refused_is_judged_anew_with_the_same_key() {
        AlarmRequest reset = bench.request(AlarmKind.HOT, AlarmStep.RESET, ANNA, "", 0);
        assertThat(bench.clerk.ask(reset, KEY))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.why()).isEqualTo(Why.NOT_NOW));

        bench.changed(draining(0));
        bench.pass(61_000);
        bench.acknowledge(AlarmKind.HOT, ANNA);
        AlarmRequest now = bench.request(AlarmKind.HOT, AlarmStep.RESET, ANNA, "", 0);
        assertThat(bench.clerk.ask(now, KEY)).isInstanceOf(Done.class);
    }

    @Test
    void a_latched_alarm_whose_condition_went_says_that_it_has_to_be_acknowledged_first() {
        bench.changed(draining(0));
        bench.pass(61_000);

        assertThat(bench.clerk.ask(bench.request(AlarmKind.HOT, AlarmStep.RESET, ANNA, "", 0), KEY))
                .isInstanceOfSatisfying(Refused.class, refused -> assertThat(refused.words())
                        .endsWith("It has to be acknowledged first."));
    }

    @ParameterizedTest
    @EnumSource(
            value = AlarmStep.class,
            names = {"SHELVED", "TAKEN_OUT_OF_SERVICE"})
    void hot_is_never_put_away(AlarmStep step) {
        AlarmReply reply = bench.clerk.ask(bench.request(AlarmKind.HOT, step, ANNA, "let me sleep", 30), KEY);

        assertThat(reply).isInstanceOfSatisfying(Refused.class, refused -> assertThat(refused.why())
                .isEqualTo(Why.STAYS_IN_VIEW));
        assertThat(bench.rack.receipts().findOfAlarm(KEY)).isEmpty();
    }

    @Test
    void who_looked_before_the_last_step_is_told_what_is_now() {
        AlarmRequest old = acknowledge(AlarmKind.WARMING);
        bench.ask(AlarmKind.WARMING, AlarmStep.SHELVED, "Ben", "later", 30);

        assertThat(bench.clerk.ask(old, KEY))
                .isEqualTo(new Stale(bench.alarm(AlarmKind.WARMING), AlarmStep.ACKNOWLEDGED, 1));
    }

    @Test
    void an_alarm_that_never_was_is_unknown() {
        var nothing = new UUID(1, 2);

        assertThat(bench.clerk.ask(new AlarmRequest(nothing, 1, AlarmStep.RESET, ANNA, "", 0), KEY))
                .isEqualTo(new Unknown(nothing));
    }

    @Test
    void a_key_that_is_too_short_or_too_long_and_a_step_of_nobodys_are_faults() {
        AlarmRequest request = acknowledge(AlarmKind.HOT);

        assertThatThrownBy(() -> bench.clerk.ask(request, "7 chars")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> bench.clerk.ask(request, "k".repeat(201)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new AlarmRequest(new UUID(1, 2), 1, AlarmStep.RAISED, ANNA, "", 0))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void every_step_is_told_live_with_what_it_can_be_acted_on_by() {
        bench.clerk.ask(bench.request(AlarmKind.WARMING, AlarmStep.SHELVED, "Ben", "a fan comes", 30), KEY);

        assertThat(happened()).extracting(Happening::kind).containsOnly(Happening.Kind.ALARM);
        assertThat(happened())
                .extracting(happening -> happening.what() + ' ' + happening.line())
                .containsExactlyInAnyOrder(
                        "RAISED HOT is UNACKNOWLEDGED",
                        "RAISED WARMING is UNACKNOWLEDGED",
                        "SHELVED WARMING is UNACKNOWLEDGED, cover SHELVED, by Ben: a fan comes");
        Happening last = happened().get(2);
        AlarmView warming = bench.alarm(AlarmKind.WARMING);
        assertThat(last.alarm()).contains(warming.id());
        assertThat(last.sequence()).isEqualTo(warming.sequence());
        assertThat(last.passage()).isEqualTo(warming.cause().passage());
        assertThat(last.channel()).isEqualTo(warming.cause().channel());
    }

    @Test
    void a_step_is_told_live_after_it_is_on_disk() {
        int before = happened().size();
        bench.desk.changed(List.of(draining(2, FindingKind.WARMING)));
        assertThat(happened()).hasSize(before);

        bench.commit();
        assertThat(happened()).hasSize(before + 1);
    }
}
