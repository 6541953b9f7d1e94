package org.ebbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.Standings.draining;

import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.outlet.MessageField;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.passage.PassageStanding;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who is told of what when the service is killed in between: the first at once, the second after ten minutes. */
class RoutesOverRestartsTest {
    private static final long MINUTE = 60_000;
    private static final PassageStanding WARM = draining(0, FindingKind.WARMING);

    @TempDir
    Path directory;

    private final HandClock clock = new HandClock();
    private final ForgetfulReceiver first = new ForgetfulReceiver("first");
    private final ForgetfulReceiver second = new ForgetfulReceiver("second");
    private int runs;
    private DeskBench bench;

    @BeforeEach
    void begin() {
        Map<ForgetfulReceiver, Route> ways = new LinkedHashMap<>();
        ways.put(first, Route.ALL);
        ways.put(second, new Route(Urgency.RINGING, Optional.empty(), Optional.of(Duration.ofMinutes(10))));
        bench = new DeskBench(directory.resolve("run " + runs), clock, ways);
        bench.desk.resume(runs == 0 ? List.of() : List.of(WARM));
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private void kill() {
        Crash.copy(directory.resolve("run " + runs), directory.resolve("run " + (runs + 1)));
        bench.close();
        runs++;
        begin();
    }

    private void pass(long millis) {
        bench.pass(millis);
        bench.deliver();
    }

    private static List<String> told(ForgetfulReceiver receiver) {
        return receiver.received().stream()
                .map(message -> message.field(MessageField.STEP))
                .distinct()
                .toList();
    }

    @Test
    void the_second_is_told_once_when_the_time_of_all_runs_together_is_up() {
        bench.changed(WARM);
        pass(4 * MINUTE);
        kill();
        pass(4 * MINUTE);
        kill();
        pass(2 * MINUTE - 1);
        assertThat(told(second)).isEmpty();
        pass(1);
        assertThat(told(second)).containsExactly("ESCALATED");
        kill();
        pass(60 * MINUTE);
        assertThat(second.inOrder()).hasSize(1);
        assertThat(told(first)).containsExactly("RAISED");
    }

    @Test
    void what_was_acknowledged_before_the_kill_is_not_escalated_after_it() {
        bench.changed(WARM);
        pass(9 * MINUTE);
        bench.acknowledge(AlarmKind.WARMING, "Anna");
        kill();
        pass(60 * MINUTE);
        assertThat(told(first)).containsExactly("RAISED", "ACKNOWLEDGED");
        assertThat(told(second)).isEmpty();
    }

    @Test
    void an_escalation_rings_and_says_what_to_do_like_any_message() {
        bench.changed(WARM);
        pass(10 * MINUTE);
        assertThat(second.received()).singleElement().satisfies(message -> {
            assertThat(message.rings()).isTrue();
            assertThat(message.field(MessageField.TO_DO)).isEqualTo(AlarmKind.WARMING.toDo());
            assertThat(message.field(MessageField.SEQUENCE)).isEqualTo("1");
            assertThat(message.field(MessageField.ACKNOWLEDGE_LINK)).startsWith("https://rack.example/");
        });
    }
}
