package org.ebbwatch.alarm.book;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.ebbwatch.alarm.book.Alarm.PutAway;
import org.ebbwatch.alarm.book.AlarmAnswer.Done;
import org.ebbwatch.alarm.book.AlarmAnswer.Refused;
import org.ebbwatch.alarm.book.AlarmAnswer.Why;

/** Weighs what people ask of alarms: done where it is allowed and well said, else refused with the reason. */
final class Asking {
    private final Function<UUID, Optional<Alarm>> alarms;
    private final Stepping stepping;

    /** How an alarm makes a step that is allowed. */
    interface Stepping {
        AlarmEvent step(Alarm alarm, AlarmStep step, String who, String reason, Optional<PutAway> putAway, Moment now);
    }

    Asking(Function<UUID, Optional<Alarm>> alarms, Stepping stepping) {
        this.alarms = alarms;
        this.stepping = stepping;
    }

    AlarmAnswer shelve(UUID id, String who, String reason, Duration time, Moment now) {
        if (time.compareTo(AlarmBook.SHORTEST_SHELVING) < 0 || time.compareTo(AlarmBook.LONGEST_SHELVING) > 0) {
            return new Refused(
                    Why.BAD_TIME,
                    "An alarm is shelved for " + AlarmBook.SHORTEST_SHELVING.toMinutes() + " minute to "
                            + AlarmBook.LONGEST_SHELVING.toHours() + " hours.",
                    find(id).map(Alarm::allowed).orElse(Set.of()));
        }
        return coverUp(id, AlarmStep.SHELVED, who, reason, OptionalLong.of(now.wallMillis() + time.toMillis()), now);
    }

    AlarmAnswer coverUp(UUID id, AlarmStep step, String who, String reason, OptionalLong untilWallMillis, Moment now) {
        Optional<Alarm> found = find(id);
        if (found.isPresent() && !found.get().kind().mayBeCovered()) {
            return new Refused(
                    Why.STAYS_IN_VIEW,
                    found.get().kind() + " stays in view until it is dealt with.",
                    found.get().allowed());
        }
        if (reason.isBlank() || reason.length() > AlarmBook.LONGEST_REASON) {
            return new Refused(
                    Why.NO_REASON,
                    "Whoever puts an alarm away says why, in 1 to " + AlarmBook.LONGEST_REASON + " characters.",
                    found.map(Alarm::allowed).orElse(Set.of()));
        }
        return request(
                id, step, who, reason, Optional.of(new PutAway(who, reason, now.wallMillis(), untilWallMillis)), now);
    }

    AlarmAnswer ask(UUID id, AlarmStep step, String who, String reason, Moment now) {
        return request(id, step, who, reason, Optional.empty(), now);
    }

    private AlarmAnswer request(
            UUID id, AlarmStep step, String who, String reason, Optional<PutAway> putAway, Moment now) {
        Optional<Alarm> found = find(id);
        if (found.isEmpty()) {
            return new Refused(Why.NO_SUCH_ALARM, "There is no alarm " + id + ", or it is over.", Set.of());
        }
        Alarm alarm = found.get();
        if (who.isBlank() || who.length() > AlarmBook.LONGEST_NAME) {
            return new Refused(
                    Why.NO_NAME,
                    "Say who you are, in 1 to " + AlarmBook.LONGEST_NAME + " characters.",
                    alarm.allowed());
        }
        if (!alarm.allowed().contains(step)) {
            return new Refused(
                    Why.NOT_NOW,
                    "An alarm that is " + alarm.state() + ", cover " + alarm.cover() + ", allows " + alarm.allowed()
                            + ", not " + step + ". " + WhyNot.words(alarm, step),
                    alarm.allowed());
        }
        return new Done(stepping.step(alarm, step, who, reason, putAway, now));
    }

    private Optional<Alarm> find(UUID id) {
        return alarms.apply(id);
    }
}
