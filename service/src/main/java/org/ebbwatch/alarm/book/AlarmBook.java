package org.ebbwatch.alarm.book;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.function.ToLongFunction;
import org.ebbwatch.alarm.book.Alarm.PutAway;
import org.ebbwatch.alarm.book.AlarmAnswer.Done;
import org.ebbwatch.alarm.book.AlarmAnswer.Refused;
import org.ebbwatch.alarm.book.AlarmAnswer.Why;
import org.ebbwatch.alarm.book.AlarmTransitions.Standing;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * All alarms that are alive. Fed with what stands on the rack and with what people ask, it gives the steps that follow, in
 * order, for others to write down and to send.
 *
 * <p>There is never more than one living alarm of a kind and subject. An alarm that nobody acknowledged is never dropped. An
 * advisory alarm rings by day only. Memory: below 2 KiB an alarm. Not thread-safe.
 */
public final class AlarmBook {
    /** The shortest and the longest time on a shelf (common practice, no source). */
    public static final Duration SHORTEST_SHELVING = Duration.ofMinutes(1);

    public static final Duration LONGEST_SHELVING = Duration.ofHours(24);

    /** Most characters of a name. */
    public static final int LONGEST_NAME = 100;

    /** Most characters of a reason. */
    public static final int LONGEST_REASON = 1_000;

    private final NightHours night;
    private final Supplier<UUID> ids;
    private final Conditions conditions = new Conditions();
    private final Map<AlarmKey, Alarm> alive = new LinkedHashMap<>();
    private final Map<UUID, Long> shelfEnds = new HashMap<>();

    /**
     * An empty book.
     *
     * @param ids gives time-ordered identifiers, a new one at each call
     */
    public AlarmBook(NightHours night, Supplier<UUID> ids) {
        this.night = night;
        this.ids = ids;
    }

    /** The living alarms, oldest first. */
    public List<Alarm> alive() {
        return List.copyOf(alive.values());
    }

    /**
     * Goes on where an earlier run ended.
     *
     * @param living its alarms
     * @param reports everything that stands now; what is not reported stands no longer
     * @throws IllegalArgumentException if two of the living have one kind and subject
     */
    public List<AlarmEvent> resume(Collection<Alarm> living, Collection<Report> reports, Moment now) {
        for (Alarm alarm : living) {
            if (alive.putIfAbsent(alarm.key(), alarm) != null) {
                throw new IllegalArgumentException("two living alarms of one kind and subject: " + alarm);
            }
            alarm.putAway().ifPresent(putAway -> shelve(alarm.id(), putAway, now));
        }
        List<AlarmEvent> events =
                new ArrayList<>(changed(conditions.takeUp(reports, key -> isActive(alive.get(key))), now));
        for (Alarm alarm : alive()) {
            if (isActive(alarm) && !conditions.holds(alarm.key())) {
                events.add(step(alarm, AlarmStep.RETURNED, now));
            }
        }
        return events;
    }

    /** A wall clock that went back says nothing about how long an alarm has been shelved: then the shelving ends now. */
    private void shelve(UUID alarm, PutAway putAway, Moment now) {
        putAway.untilWallMillis().ifPresent(until -> {
            boolean wentBack = now.wallMillis() < putAway.sinceWallMillis();
            long left = wentBack ? 0 : until - now.wallMillis();
            shelfEnds.put(alarm, now.monotonicMillis() + left);
        });
    }

    /** Takes reports that belong to one moment, so that a cause they share is seen as one. */
    public List<AlarmEvent> report(Collection<Report> reports, Moment now) {
        return changed(conditions.take(reports), now);
    }

    private List<AlarmEvent> changed(Conditions.Change change, Moment now) {
        List<AlarmEvent> events = new ArrayList<>();
        for (AlarmKey key : change.ended()) {
            events.add(step(alive.get(key), AlarmStep.RETURNED, now));
        }
        for (AlarmKey key : change.begun()) {
            Alarm alarm = alive.get(key);
            if (!isActive(alarm)) {
                Alarm raised = alarm == null ? fresh(key, now) : alarm.withCause(conditions.cause(key));
                events.add(step(raised.withTags(conditions.tags(key)), AlarmStep.RAISED, now));
            }
        }
        alive.replaceAll((key, alarm) -> {
            List<String> tags = conditions.tags(key);
            return tags.isEmpty() ? alarm : alarm.withTags(tags);
        });
        return events;
    }

    private Alarm fresh(AlarmKey key, Moment now) {
        return new Alarm(
                ids.get(),
                key.kind(),
                key.subject(),
                Standing.NOTHING,
                false,
                now.wallMillis(),
                0,
                conditions.cause(key),
                List.of(),
                "",
                Optional.empty(),
                OptionalLong.empty());
    }

    /**
     * Lets time pass; to be called about once a second.
     *
     * @param timeOf the present in a board's event time; for the service's own reports, which name no board, in the time
     *     they are made in
     */
    public List<AlarmEvent> tick(Moment now, ToLongFunction<String> timeOf) {
        List<AlarmEvent> events = new ArrayList<>();
        for (AlarmKey key : conditions.away(timeOf)) {
            events.add(step(alive.get(key), AlarmStep.RETURNED, now));
        }
        for (Alarm alarm : alive()) {
            Long end = shelfEnds.get(alarm.id());
            if (end != null && (now.monotonicMillis() >= end || isPast(alarm, now.wallMillis()))) {
                events.add(step(alarm, AlarmStep.SHELVING_ENDED, "", "its time is over", now));
            }
        }
        if (!night.isNight(now.wallMillis())) {
            for (Alarm alarm : alive()) {
                if (!alarm.told() && alarm.cover() == Cover.NONE) {
                    events.add(step(alarm, AlarmStep.TOLD, now));
                }
            }
        }
        return events;
    }

    private static boolean isPast(Alarm alarm, long wallMillis) {
        OptionalLong until = alarm.putAway().orElseThrow().untilWallMillis();
        return until.isPresent() && wallMillis >= until.getAsLong();
    }

    // ---- what people ask ----

    /** A person knows of it. */
    public AlarmAnswer acknowledge(UUID id, String who, Moment now) {
        return ask(id, AlarmStep.ACKNOWLEDGED, who, "", now);
    }

    /** A person has looked after what left a latched alarm. */
    public AlarmAnswer reset(UUID id, String who, Moment now) {
        return ask(id, AlarmStep.RESET, who, "", now);
    }

    /** A person puts it away for a time. */
    public AlarmAnswer shelve(UUID id, String who, String reason, Duration time, Moment now) {
        if (time.compareTo(SHORTEST_SHELVING) < 0 || time.compareTo(LONGEST_SHELVING) > 0) {
            return new Refused(
                    Why.BAD_TIME,
                    "An alarm is shelved for " + SHORTEST_SHELVING.toMinutes() + " minute to "
                            + LONGEST_SHELVING.toHours() + " hours.",
                    find(id).map(Alarm::allowed).orElse(Set.of()));
        }
        AlarmAnswer answer =
                coverUp(id, AlarmStep.SHELVED, who, reason, OptionalLong.of(now.wallMillis() + time.toMillis()), now);
        if (answer instanceof Done) {
            shelfEnds.put(id, now.monotonicMillis() + time.toMillis());
        }
        return answer;
    }

    /** A person ends the shelving early. */
    public AlarmAnswer endShelving(UUID id, String who, Moment now) {
        return ask(id, AlarmStep.SHELVING_ENDED, who, "", now);
    }

    /** A person takes it out of service, for work on what it watches. */
    public AlarmAnswer takeOutOfService(UUID id, String who, String reason, Moment now) {
        return coverUp(id, AlarmStep.TAKEN_OUT_OF_SERVICE, who, reason, OptionalLong.empty(), now);
    }

    /** A person puts it back in service. */
    public AlarmAnswer putBackInService(UUID id, String who, Moment now) {
        return ask(id, AlarmStep.PUT_BACK_IN_SERVICE, who, "", now);
    }

    private AlarmAnswer coverUp(
            UUID id, AlarmStep step, String who, String reason, OptionalLong untilWallMillis, Moment now) {
        Optional<Alarm> found = find(id);
        if (found.isPresent() && !found.get().kind().mayBeCovered()) {
            return new Refused(
                    Why.STAYS_IN_VIEW,
                    found.get().kind() + " stays in view until it is dealt with.",
                    found.get().allowed());
        }
        if (reason.isBlank() || reason.length() > LONGEST_REASON) {
            return new Refused(
                    Why.NO_REASON,
                    "Whoever puts an alarm away says why, in 1 to " + LONGEST_REASON + " characters.",
                    found.map(Alarm::allowed).orElse(Set.of()));
        }
        return request(
                id, step, who, reason, Optional.of(new PutAway(who, reason, now.wallMillis(), untilWallMillis)), now);
    }

    private AlarmAnswer ask(UUID id, AlarmStep step, String who, String reason, Moment now) {
        return request(id, step, who, reason, Optional.empty(), now);
    }

    private AlarmAnswer request(
            UUID id, AlarmStep step, String who, String reason, Optional<PutAway> putAway, Moment now) {
        Optional<Alarm> found = find(id);
        if (found.isEmpty()) {
            return new Refused(Why.NO_SUCH_ALARM, "There is no alarm " + id + ", or it is over.", Set.of());
        }
        Alarm alarm = found.get();
        if (who.isBlank() || who.length() > LONGEST_NAME) {
            return new Refused(
                    Why.NO_NAME, "Say who you are, in 1 to " + LONGEST_NAME + " characters.", alarm.allowed());
        }
        if (!alarm.allowed().contains(step)) {
            return new Refused(
                    Why.NOT_NOW,
                    "An alarm that is " + alarm.state() + ", cover " + alarm.cover() + ", allows " + alarm.allowed()
                            + ", not " + step + ". " + WhyNot.words(alarm, step),
                    alarm.allowed());
        }
        return new Done(step(alarm, step, who, reason, putAway, now));
    }

    private Optional<Alarm> find(UUID id) {
        return alive.values().stream().filter(alarm -> alarm.id().equals(id)).findFirst();
    }

    // ---- how an alarm steps ----

    private AlarmEvent step(Alarm alarm, AlarmStep step, Moment now) {
        return step(alarm, step, "", "", now);
    }

    private AlarmEvent step(Alarm alarm, AlarmStep step, String who, String reason, Moment now) {
        return step(alarm, step, who, reason, alarm.putAway(), now);
    }

    private AlarmEvent step(
            Alarm alarm, AlarmStep step, String who, String reason, Optional<PutAway> putAway, Moment now) {
        Standing next = AlarmTransitions.next(
                        alarm.standing(), step, alarm.kind().isLatched())
                .orElseThrow(() -> new IllegalStateException(alarm + " cannot be " + step));
        boolean loud = Set.of(AlarmStep.RAISED, AlarmStep.TOLD, AlarmStep.SHELVING_ENDED, AlarmStep.PUT_BACK_IN_SERVICE)
                .contains(step);
        boolean wouldRing = loud && next.cover() == Cover.NONE && next.state().isUnacknowledged();
        boolean waits = wouldRing && alarm.kind().urgency() == Urgency.ADVISORY && night.isNight(now.wallMillis());
        boolean told = !waits && (wouldRing || alarm.told() || step == AlarmStep.TOLD);
        Alarm after = alarm.stepped(
                next,
                told,
                step == AlarmStep.ACKNOWLEDGED ? who : alarm.acknowledgedBy(),
                next.cover() == Cover.NONE ? Optional.empty() : putAway,
                now.wallMillis());
        if (next.cover() != Cover.SHELVED) {
            shelfEnds.remove(alarm.id());
        }
        if (after.isAlive()) {
            alive.put(after.key(), after);
        } else {
            alive.remove(after.key());
        }
        return new AlarmEvent(after, step, alarm.standing(), who, reason, now, told, wouldRing && !waits);
    }

    private static boolean isActive(Alarm alarm) {
        return alarm != null && alarm.state().isActive();
    }
}
