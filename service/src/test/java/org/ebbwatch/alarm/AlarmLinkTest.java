package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.Standings.draining;

import java.nio.file.Path;
import java.util.List;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer.Bad;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer.Changed;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer.Done;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer.Expired;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer.Open;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer.Over;
import org.ebbwatch.alarm.AlarmLinkDesk.LinkAnswer.Used;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.outlet.MessageField;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.passage.PassageStanding;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AlarmLinkTest {
    private static final long HOUR = 3_600_000;
    private static final PassageStanding WARM = draining(0, FindingKind.WARMING);

    @TempDir
    Path directory;

    private final HandClock clock = new HandClock();
    private DeskBench bench;

    @BeforeEach
    void a_cell_is_warm_and_a_message_tells_of_it() {
        bench = new DeskBench(directory, clock);
        bench.desk.resume(List.of());
        bench.changed(WARM);
        bench.deliver();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private String token() {
        String link = link(bench.delivered.size() - 1);
        assertThat(link).startsWith("https://rack.example/alarms/acknowledge/");
        return link.substring(link.lastIndexOf('/') + 1);
    }

    private String link(int message) {
        return bench.delivered.get(message).field(MessageField.ACKNOWLEDGE_LINK);
    }

    private int steps() {
        return bench.table.steps(bench.alarm(AlarmKind.WARMING).id()).size();
    }

    @Test
    void looking_changes_nothing_however_often() {
        String token = token();
        for (int n = 0; n < 5; n++) {
            assertThat(bench.links.look(token)).isEqualTo(new Open(bench.alarm(AlarmKind.WARMING)));
        }
        assertThat(steps()).isEqualTo(1);
    }

    @Test
    void a_link_acknowledges_once_and_says_by_which_outlet_it_was_sent() {
        String token = token();

        assertThat(bench.links.acknowledge(token)).isInstanceOfSatisfying(Done.class, done -> {
            assertThat(done.onDisk()).isTrue();
            assertThat(done.receipt().state()).isEqualTo(AlarmState.ACKNOWLEDGED);
        });

        assertThat(bench.alarm(AlarmKind.WARMING).acknowledgedBy()).isEqualTo("link of test");
        assertThat(bench.links.acknowledge(token)).isInstanceOf(Used.class);
        assertThat(bench.links.look(token)).isInstanceOf(Used.class);
        assertThat(steps()).isEqualTo(2);
    }

    @Test
    void a_link_that_was_used_is_known_after_a_restart_too() {
        String token = token();
        bench.links.acknowledge(token);
        bench.close();
        bench = new DeskBench(directory, clock);
        bench.desk.resume(List.of(WARM));

        assertThat(bench.links.acknowledge(token)).isInstanceOf(Used.class);
    }

    @Test
    void a_link_that_was_used_while_storage_is_away_does_not_work_twice() {
        String token = token();
        bench.storageAway = true;
        assertThat(bench.links.acknowledge(token)).isInstanceOfSatisfying(Done.class, done -> assertThat(done.onDisk())
                .isFalse());
        assertThat(bench.links.acknowledge(token)).isInstanceOf(Used.class);
    }

    @Test
    void a_link_lasts_a_day() {
        String token = token();
        bench.pass(24 * HOUR - 1);
        assertThat(bench.links.look(token)).isInstanceOf(Open.class);
        bench.pass(1);
        assertThat(bench.links.look(token)).isEqualTo(new Expired());
        assertThat(bench.links.acknowledge(token)).isEqualTo(new Expired());
        assertThat(steps()).isEqualTo(1);
    }

    @Test
    void a_link_is_for_the_step_its_message_told_of_and_for_no_later_one() {
        String first = token();
        bench.changed(draining(0));
        bench.pass(61_000);
        bench.deliver();
        String second = token();

        assertThat(bench.links.acknowledge(first)).isEqualTo(new Changed(bench.alarm(AlarmKind.WARMING)));
        assertThat(steps()).isEqualTo(2);
        assertThat(bench.links.acknowledge(second)).isInstanceOf(Done.class);
        assertThat(bench.links.acknowledge(first)).isEqualTo(new Over());
    }

    @Test
    void where_somebody_acknowledged_already_the_link_has_nothing_to_do() {
        String token = token();
        bench.acknowledge(AlarmKind.WARMING, "Anna");
        assertThat(bench.links.acknowledge(token)).isInstanceOf(Changed.class);
        assertThat(bench.alarm(AlarmKind.WARMING).acknowledgedBy()).isEqualTo("Anna");
    }

    @Test
    void only_messages_of_what_can_be_acknowledged_carry_a_link() {
        bench.acknowledge(AlarmKind.WARMING, "Anna");
        bench.ask(AlarmKind.WARMING, AlarmStep.SHELVED, "Ben", "a fan comes", 30);
        bench.deliver();
        assertThat(bench.delivered).hasSize(3);
        assertThat(link(1)).isEmpty();
        assertThat(link(2)).isEmpty();
    }

    @Test
    void what_this_service_never_sent_is_bad() {
        LinkAnswer bad = new Bad();
        assertThat(bench.links.look("x")).isEqualTo(bad);
        assertThat(bench.links.acknowledge(token() + "A")).isEqualTo(bad);
        assertThat(steps()).isEqualTo(1);
    }
}
