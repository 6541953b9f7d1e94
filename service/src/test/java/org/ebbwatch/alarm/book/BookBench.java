package org.ebbwatch.alarm.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.ebbwatch.alarm.book.AlarmAnswer.Done;
import org.ebbwatch.alarm.book.AlarmAnswer.Refused;
import org.ebbwatch.alarm.book.AlarmAnswer.Why;
import org.ebbwatch.alarm.book.Report.Condition;

/** A book, its time, and passages 0, 1, 2 ... of the boards left (below 16, and from 100 on) and right. */
final class BookBench {
    /** 2026-11-25T12:00Z. */
    static final long NOON = 1_795_608_000_000L;

    static final long HOUR = 3_600_000;
    static final String ANNA = "Anna";

    AlarmBook book = newBook();
    long wallMillis = NOON;
    long monotonicMillis = 5_000;
    final Map<String, Long> eventMillis = new HashMap<>(Map.of("left", 0L, "right", 0L));
    final List<AlarmEvent> events = new ArrayList<>();
    private long ids;

    AlarmBook newBook() {
        return new AlarmBook(NightHours.usual(ZoneOffset.UTC), () -> new UUID(7, ++ids));
    }

    static UUID passage(int n) {
        return new UUID(0, n);
    }

    static String board(int n) {
        return n < 16 || n >= 100 ? "left" : "right";
    }

    Moment now() {
        return new Moment(wallMillis, monotonicMillis);
    }

    Report standing(int n, AlarmKind... kinds) {
        return report(n, false, kinds);
    }

    Report over(int n) {
        return report(n, true);
    }

    /** A cell that warms slightly. */
    Report mild(int n) {
        long millis = eventMillis.get(board(n));
        var cause =
                new Cause("5.2 K over its reference", Optional.of(passage(n)), "cell " + n, board(n), n, millis, 9, 0);
        return new Report(
                passage(n).toString(), board(n), millis, false, List.of(new Condition(AlarmKind.WARMING, cause, true)));
    }

    /** Goes on with another book over the same alarms; gives what followed. */
    List<AlarmEvent> restart(Report... standing) {
        List<Alarm> living = book.alive();
        book = newBook();
        return kept(book.resume(living, List.of(standing), now()));
    }

    private Report report(int n, boolean over, AlarmKind... kinds) {
        long millis = eventMillis.get(board(n));
        List<Condition> conditions = Arrays.stream(kinds)
                .map(kind -> new Condition(
                        kind,
                        new Cause(kind + " seen", Optional.of(passage(n)), "cell " + n, board(n), n, millis, 9, 0)))
                .toList();
        return new Report(passage(n).toString(), board(n), millis, over, conditions);
    }

    /** Reports at one moment; gives what followed. */
    List<AlarmEvent> report(Report... reports) {
        return kept(book.report(List.of(reports), now()));
    }

    /** Lets so much time pass everywhere; gives what followed. */
    List<AlarmEvent> pass(long millis) {
        wallMillis += millis;
        monotonicMillis += millis;
        eventMillis.replaceAll((board, before) -> before + millis);
        return tick();
    }

    List<AlarmEvent> tick() {
        return kept(book.tick(now(), board -> board.isEmpty() ? monotonicMillis : eventMillis.get(board)));
    }

    private List<AlarmEvent> kept(List<AlarmEvent> now) {
        events.addAll(now);
        return now;
    }

    AlarmEvent done(AlarmAnswer answer) {
        assertThat(answer).isInstanceOf(Done.class);
        AlarmEvent event = ((Done) answer).event();
        events.add(event);
        return event;
    }

    Alarm only() {
        assertThat(book.alive()).hasSize(1);
        return book.alive().get(0);
    }

    Alarm of(AlarmKind kind) {
        return book.alive().stream()
                .filter(alarm -> alarm.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    void acknowledge(Alarm alarm) {
        done(book.acknowledge(alarm.id(), ANNA, now()));
    }

    /** Sixteen cells of one board on which the same stands. */
    Report[] sixteen(AlarmKind... kinds) {
        return IntStream.range(0, 16).mapToObj(n -> standing(n, kinds)).toArray(Report[]::new);
    }

    /** Why a request was refused; the words for it are a sentence. */
    static Why refused(AlarmAnswer answer) {
        assertThat(answer).isInstanceOf(Refused.class);
        assertThat(((Refused) answer).words()).endsWith(".");
        return ((Refused) answer).why();
    }
}
