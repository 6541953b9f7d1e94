package org.ebbwatch.alarm.outlet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.ebbwatch.alarm.outlet.Outlet.Delivery;
import org.ebbwatch.alarm.outlet.Outlet.NotTaken;
import org.ebbwatch.alarm.outlet.Outlet.Taken;
import org.ebbwatch.alarm.outlet.Outlet.Unwanted;
import org.junit.jupiter.api.Test;

class OutboxTest {
    private final ManualTime time = new ManualTime();
    private final List<Long> tried = new ArrayList<>();
    private final List<Long> receipts = new ArrayList<>();
    private Function<OutletMessage, Delivery> receiver = message -> new Taken();
    private final Outbox box = new Outbox(
            new Outlet() {
                @Override
                public String name() {
                    return "test";
                }

                @Override
                public Delivery deliver(OutletMessage message) {
                    tried.add(message.number());
                    return receiver.apply(message);
                }
            },
            (message, wall) -> receipts.add(message.number()));

    private static OutletMessage message(long number, boolean rings) {
        return new OutletMessage(new UUID(7, number), number, rings, "{}", Map.of());
    }

    private long attempt() throws InterruptedException {
        return box.attempt(time.now());
    }

    private void runFor(long millis) throws InterruptedException {
        long left = millis;
        while (left >= 0) {
            long pause = attempt();
            if (pause == 0) {
                continue;
            }
            long step = Math.min(pause, left + 1);
            time.pass(step);
            left -= step;
        }
    }

    @Test
    void messages_leave_in_order_and_are_receipted() throws InterruptedException {
        for (long number = 1; number <= 3; number++) {
            box.put(message(number, true));
        }
        runFor(0);

        assertThat(receipts).containsExactly(1L, 2L, 3L);
        assertThat(box.view().pending()).isZero();
        assertThat(box.view().lastSuccessWallMillis()).hasValue(time.now().wallMillis() - 1);
        assertThat(attempt()).isEqualTo(Long.MAX_VALUE);
    }

    @Test
    void a_receiver_that_is_away_is_tried_after_1_2_4_seconds_and_at_last_every_5_minutes()
            throws InterruptedException {
        receiver = message -> new NotTaken("away");
        box.put(message(1, true));
        List<Long> pauses = new ArrayList<>();
        for (int n = 0; n < 40; n++) {
            pauses.add(attempt() / 1000);
            time.pass(pauses.get(n) * 1000 - 1);
            attempt();
            assertThat(tried).hasSize(n + 1);
            time.pass(1);
        }

        assertThat(pauses.subList(0, 11)).containsExactly(1L, 2L, 4L, 8L, 16L, 32L, 64L, 128L, 256L, 300L, 300L);
        assertThat(pauses.subList(11, 40)).containsOnly(300L);
        assertThat(box.view().failures()).isEqualTo(40);
        assertThat(box.view().lastError()).isEqualTo("away");
    }

    @Test
    void after_hours_away_everything_arrives_in_order() throws InterruptedException {
        receiver = message -> new NotTaken("away");
        for (long number = 1; number <= 50; number++) {
            box.put(message(number, number % 3 == 0));
            runFor(600_000);
        }
        assertThat(receipts).isEmpty();
        assertThat(box.view().pending()).isEqualTo(50);

        receiver = message -> new Taken();
        runFor(300_000);

        assertThat(receipts).hasSize(50).isSorted();
        assertThat(box.view().lastError()).isEmpty();
    }

    @Test
    void a_message_that_rings_waits_for_no_pause() throws InterruptedException {
        receiver = message -> new NotTaken("away");
        box.put(message(1, true));
        runFor(3_600_000);
        int before = tried.size();

        box.put(message(2, false));
        attempt();
        assertThat(tried).hasSize(before);
        box.put(message(3, true));
        attempt();
        assertThat(tried).hasSize(before + 1);
    }

    @Test
    void a_message_that_rings_while_an_attempt_fails_is_tried_at_once() throws InterruptedException {
        receiver = message -> {
            if (message.number() == 1 && box.view().pending() == 1) {
                box.put(message(2, true));
            }
            return new NotTaken("away");
        };
        box.put(message(1, true));

        assertThat(attempt()).isZero();
        assertThat(attempt()).isEqualTo(2_000);
    }

    @Test
    void a_message_nobody_wants_steps_aside_and_is_tried_again_for_ever() throws InterruptedException {
        receiver = message -> message.number() == 2 ? new Unwanted("answered 400") : new Taken();
        for (long number = 1; number <= 4; number++) {
            box.put(message(number, true));
        }
        runFor(3_600_000);

        assertThat(receipts).containsExactly(1L, 3L, 4L);
        assertThat(box.view().unwanted()).isEqualTo(1);
        assertThat(tried.stream().filter(number -> number == 2).count()).isGreaterThan(10);

        receiver = message -> new Taken();
        runFor(300_000);
        assertThat(receipts).containsExactly(1L, 3L, 4L, 2L);
    }

    @Test
    void a_fault_in_an_outlet_is_a_failed_attempt() throws InterruptedException {
        receiver = message -> {
            throw new IllegalStateException("token 123");
        };
        box.put(message(1, true));
        attempt();

        assertThat(box.view().pending()).isEqualTo(1);
        assertThat(box.view().lastError()).contains("IllegalStateException").doesNotContain("123");
    }

    @Property
    void whatever_a_receiver_does_each_message_arrives_once_and_in_order(
            @ForAll List<Boolean> takes, @ForAll List<Boolean> rings) throws InterruptedException {
        new OutboxTest().everyMessageArrives(takes, rings);
    }

    private void everyMessageArrives(List<Boolean> takes, List<Boolean> rings) throws InterruptedException {
        List<Boolean> answers = new ArrayList<>(takes);
        receiver = message -> !answers.isEmpty() && !answers.remove(0) ? new NotTaken("away") : new Taken();
        for (int n = 0; n < rings.size(); n++) {
            box.put(message(n + 1, rings.get(n)));
            runFor(500);
        }
        runFor(300_000L * (takes.size() + 1));

        assertThat(receipts).hasSize(rings.size()).isSorted();
    }
}
