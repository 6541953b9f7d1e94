package org.ebbwatch.web.live;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.http.sse.Event;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.passage.Happening;
import org.ebbwatch.passage.Happenings;
import org.junit.jupiter.api.Test;
import org.reactivestreams.Subscriber;
import org.reactivestreams.Subscription;

class ListenerTest {
    private static final long SECOND = 1_000_000_000L;

    private final Happenings happenings = new Happenings(3);
    private final Server server = new Server();
    private int woken;

    /** What stands between a listener and its client: it takes as much as it asked for. */
    private static final class Server implements Subscriber<Event<?>> {
        private final List<Event<?>> taken = new ArrayList<>();
        private Subscription subscription;
        private boolean ended;
        private boolean faulty;
        private Throwable failure;

        @Override
        public void onSubscribe(Subscription its) {
            subscription = its;
        }

        @Override
        public void onNext(Event<?> event) {
            if (faulty) {
                throw new IllegalStateException("the connection is gone");
            }
            taken.add(event);
        }

        @Override
        public void onError(Throwable its) {
            failure = its;
        }

        @Override
        public void onComplete() {
            ended = true;
        }

        List<String> names() {
            return taken.stream().map(Event::getName).toList();
        }
    }

    private Listener listener(String lastNumber) {
        var listener = new Listener(happenings, begun -> {}, () -> woken++, lastNumber);
        listener.subscribe(server);
        return listener;
    }

    private void happens(int times) {
        var happening = new Happening(Happening.Kind.LINK, "bench", Optional.empty(), "", -1, -1, 0, "CONNECTED", "");
        happenings.add(Collections.nCopies(times, happening));
    }

    @Test
    void nothing_is_told_that_was_not_asked_for() {
        Listener listener = listener(null);
        happens(5);

        assertThat(listener.serve(0)).isTrue();
        assertThat(server.taken).isEmpty();
        server.subscription.request(3);
        assertThat(woken).isOne();
        listener.serve(1);
        assertThat(server.names()).containsExactly("hello", "happening", "happening");
        server.subscription.request(10);
        listener.serve(2);
        assertThat(server.names()).hasSize(6);
    }

    @Test
    void everything_is_told_once_and_in_order() {
        Listener listener = listener(null);
        server.subscription.request(Long.MAX_VALUE);
        server.subscription.request(7);
        happens(200);
        listener.serve(0);

        long first = 3_000_000_000L;
        assertThat(server.taken).hasSize(201);
        for (int n = 0; n <= 200; n++) {
            assertThat(server.taken.get(n).getId()).isEqualTo(Long.toString(first + n));
        }
    }

    @Test
    void fifteen_quiet_seconds_are_broken_by_a_comment() {
        Listener listener = listener(null);
        server.subscription.request(100);
        listener.serve(0);
        listener.serve(14 * SECOND);
        assertThat(server.taken).hasSize(1);
        listener.serve(15 * SECOND);
        assertThat(server.taken.get(1).getComment()).isEqualTo("here");
        listener.serve(29 * SECOND);
        assertThat(server.taken).hasSize(2);
        listener.serve(30 * SECOND);
        assertThat(server.taken).hasSize(3);
    }

    @Test
    void one_that_takes_nothing_for_a_minute_is_let_go() {
        Listener listener = listener(null);
        server.subscription.request(1);
        listener.serve(0);
        assertThat(listener.serve(59 * SECOND)).isTrue();
        assertThat(server.ended).isFalse();
        assertThat(listener.serve(60 * SECOND)).isFalse();
        assertThat(server.ended).isTrue();
    }

    @Test
    void one_that_falls_behind_what_is_remembered_is_told_to_look_anew() {
        Listener listener = listener(null);
        server.subscription.request(2);
        happens(1);
        listener.serve(0);
        happens(Happenings.KEPT + 1);
        server.subscription.request(2);
        listener.serve(1);

        assertThat(server.names()).containsExactly("hello", "happening", "reset");
        assertThat(server.taken.get(2).getId()).isEqualTo(Long.toString(happenings.latest()));
        happens(1);
        listener.serve(2);
        assertThat(server.names()).endsWith("happening");
    }

    @Test
    void one_that_comes_back_in_time_gets_what_it_missed_to_the_last_one_that_is_remembered() {
        happens(Happenings.KEPT + 10);
        Listener listener = listener(Long.toString(happenings.latest() - Happenings.KEPT));
        server.subscription.request(Long.MAX_VALUE);
        listener.serve(0);

        assertThat(server.taken).hasSize(1 + Happenings.KEPT);
        assertThat(server.names()).startsWith("hello", "happening").doesNotContain("reset");
    }

    @Test
    void one_that_has_gone_is_forgotten_without_a_word() {
        Listener listener = listener(null);
        server.subscription.request(10);
        server.subscription.cancel();

        assertThat(listener.serve(0)).isFalse();
        assertThat(server.taken).isEmpty();
        assertThat(server.ended).isFalse();
    }

    @Test
    void a_fault_of_one_connection_ends_that_one_alone() {
        Listener listener = listener(null);
        server.faulty = true;
        server.subscription.request(10);

        assertThat(listener.serve(0)).isFalse();
        assertThat(server.failure).hasMessage("the connection is gone");
        assertThat(server.ended).isFalse();
    }
}
