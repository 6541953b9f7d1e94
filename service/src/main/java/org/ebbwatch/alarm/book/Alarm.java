package org.ebbwatch.alarm.book;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.alarm.book.AlarmTransitions.Standing;

/**
 * One alarm, from the moment its condition began to the moment it is normal and in view again. If the condition begins after
 * that, it is another alarm.
 *
 * @param id time-ordered (RFC 9562, version 7); the same over restarts and in every message
 * @param kind what is the matter
 * @param subject what it is about
 * @param standing its state and what covers it
 * @param told whether the outlets were told of it; false while it waits for the morning
 * @param raisedWallMillis when it was raised first, a label
 * @param steps how many steps it has made
 * @param cause why its condition began, the last time it did
 * @param tags of the cells it is about now; empty where it is about none
 * @param acknowledgedBy who acknowledged it last, or empty
 * @param putAway why and by whom it was covered, where it is
 * @param unheededSinceWallMillis since when the outlets know of it and nobody has acknowledged it, a label; empty while
 *     somebody has, while it is covered, and while it waits for the morning
 */
public record Alarm(
        UUID id,
        AlarmKind kind,
        Subject subject,
        Standing standing,
        boolean told,
        long raisedWallMillis,
        long steps,
        Cause cause,
        List<String> tags,
        String acknowledgedBy,
        Optional<PutAway> putAway,
        OptionalLong unheededSinceWallMillis) {

    public Alarm {
        requireNonNull(id);
        requireNonNull(kind);
        requireNonNull(subject);
        requireNonNull(standing);
        requireNonNull(cause);
        requireNonNull(acknowledgedBy);
        requireNonNull(putAway);
        requireNonNull(unheededSinceWallMillis);
        tags = List.copyOf(tags);
    }

    /**
     * A cover put on by a person.
     *
     * @param who put it on
     * @param reason why
     * @param sinceWallMillis when
     * @param untilWallMillis when it ends by itself; empty: it does not
     */
    public record PutAway(String who, String reason, long sinceWallMillis, OptionalLong untilWallMillis) {
        public PutAway {
            requireNonNull(who);
            requireNonNull(reason);
            requireNonNull(untilWallMillis);
        }
    }

    /** What is the matter, in one sentence; where it is about several cells of a board, how many and which. */
    public String what() {
        return AlarmWords.of(this).what();
    }

    /** What may come of it. */
    public String consequence() {
        return AlarmWords.of(this).consequence();
    }

    /** What to do about it. */
    public String toDo() {
        return AlarmWords.of(this).toDo();
    }

    AlarmKey key() {
        return new AlarmKey(kind, subject);
    }

    public AlarmState state() {
        return standing.state();
    }

    public Cover cover() {
        return standing.cover();
    }

    /** Whether it still needs anybody or anything: only then is it kept in the book. */
    public boolean isAlive() {
        return !standing.equals(Standing.NOTHING);
    }

    /** What a person may ask for now. */
    public Set<AlarmStep> allowed() {
        return AlarmTransitions.allowed(standing, kind);
    }

    /** Whether it needs a person now whom nobody has sent: in view, not acknowledged, and not over by itself. */
    boolean isUnheeded() {
        return unheededSinceWallMillis.isPresent() && state() != AlarmState.RETURNED_UNACKNOWLEDGED;
    }

    Alarm withTags(List<String> now) {
        return with(cause, now);
    }

    Alarm withCause(Cause now) {
        return with(now, tags);
    }

    private Alarm with(Cause nowCause, List<String> nowTags) {
        return new Alarm(
                id,
                kind,
                subject,
                standing,
                told,
                raisedWallMillis,
                steps,
                nowCause,
                nowTags,
                acknowledgedBy,
                putAway,
                unheededSinceWallMillis);
    }

    Alarm stepped(Standing next, boolean nowTold, String acknowledging, Optional<PutAway> nowPutAway, long wallMillis) {
        boolean unheeded = nowTold && next.cover() == Cover.NONE && next.state().isUnacknowledged();
        return new Alarm(
                id,
                kind,
                subject,
                next,
                nowTold,
                raisedWallMillis,
                steps + 1,
                cause,
                tags,
                acknowledging,
                nowPutAway,
                unheeded ? OptionalLong.of(unheededSinceWallMillis.orElse(wallMillis)) : OptionalLong.empty());
    }
}
