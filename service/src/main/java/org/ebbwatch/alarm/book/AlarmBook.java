package org.ebbwatch.alarm.book;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
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
import org.ebbwatch.alarm.book.AlarmTransitions.Standing;
import org.ebbwatch.alarm.book.Conditions.Begun;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * All alarms that are alive. Fed with what stands on the rack and with what people ask, it gives the steps that follow, in
 * order, for others to write down and to send.
 *
 * <p>There is never more than one living alarm of a kind and subject. An alarm that nobody acknowledged is never dropped. An
 * advisory alarm rings by day only. While too many ring, all but danger is told together in the alarm {@link AlarmKind#FLOOD}.
 * Memory: below 2 KiB an alarm. Not thread-safe.
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
    private final Shelf shelf = new Shelf();
    private final Flood flood = new Flood();
    private final Asking asking = new Asking(this::find, this::step);
    private final Set<AlarmKey> amended = new LinkedHashSet<>();

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
            alarm.putAway().ifPresent(putAway -> shelf.takeUp(alarm.id(), putAway, now));
        }
        List<AlarmEvent> events =
                new ArrayList<>(changed(conditions.takeUp(reports, new Living(alive, Map.copyOf(alive))), now));
        for (Alarm alarm : alive()) {
            if (Living.isActive(alarm) && !conditions.holds(alarm.key())) {
                events.add(step(alarm, AlarmStep.RETURNED, now));
            }
        }
        return events;
    }

    /** Takes reports that belong to one moment, so that a cause they share is seen as one. */
    public List<AlarmEvent> report(Collection<Report> reports, Moment now) {
        return changed(conditions.take(reports, new Living(alive, Map.of()), now.monotonicMillis()), now);
    }

    private List<AlarmEvent> changed(Conditions.Change change, Moment now) {
        List<AlarmEvent> events = new ArrayList<>();
        for (AlarmKey key : change.ended()) {
            events.add(step(alive.get(key), AlarmStep.RETURNED, now));
        }
        change.begun().forEach(begun -> events.addAll(begin(begun, now)));
        nameCells();
        return events;
    }

    private List<AlarmEvent> begin(Begun begun, Moment now) {
        List<AlarmEvent> events = new ArrayList<>();
        Alarm alarm = alive.get(begun.key());
        if (begun.anew() && Living.isActive(alarm)) {
            events.add(step(alarm, AlarmStep.RETURNED, "", "it begins anew on others", now));
            alarm = alive.get(begun.key());
        }
        if (!Living.isActive(alarm)) {
            Alarm raised = alarm == null ? fresh(begun.key(), begun.cause(), now) : alarm.withCause(begun.cause());
            events.add(step(raised.withTags(begun.tags()), AlarmStep.RAISED, now));
        }
        return events;
    }

    private void nameCells() {
        alive.replaceAll((key, alarm) -> {
            List<String> tags = conditions.tags(key);
            if (tags.isEmpty() || tags.equals(alarm.tags())) {
                return alarm;
            }
            amended.add(key);
            return alarm.withTags(tags);
        });
    }

    /** The alarms that came to name other cells, without a step, since the last call; to be written down. */
    public List<Alarm> takeAmended() {
        List<Alarm> taken =
                amended.stream().filter(alive::containsKey).map(alive::get).toList();
        amended.clear();
        return taken;
    }

    private Alarm fresh(AlarmKey key, Cause cause, Moment now) {
        return new Alarm(
                ids.get(),
                key.kind(),
                key.subject(),
                Standing.NOTHING,
                false,
                now.wallMillis(),
                0,
                cause,
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
        conditions.due(timeOf, now.monotonicMillis()).forEach(begun -> events.addAll(begin(begun, now)));
        nameCells();
        for (AlarmKey key : conditions.away(timeOf)) {
            events.add(step(alive.get(key), AlarmStep.RETURNED, now));
        }
        for (Alarm alarm : alive()) {
            if (shelf.isOver(alarm, now)) {
                events.add(step(alarm, AlarmStep.SHELVING_ENDED, "", "its time is over", now));
            }
        }
        if (flood.isDue(now.monotonicMillis())) {
            events.addAll(flood.isSubsiding(alive()) ? endFlood(now) : tellTogether(flood.untold(alive()), now));
        }
        events.addAll(tellWhatWaits(now));
        if (flood.begins(alive())) {
            events.addAll(tellTogether(flood.untold(alive()), now));
        }
        return events;
    }

    private List<AlarmEvent> endFlood(Moment now) {
        flood.end();
        return List.of(step(alive.get(Flood.KEY), AlarmStep.RETURNED, now));
    }

    /** What waited for the morning, or was kept back in a flood that is over. */
    private List<AlarmEvent> tellWhatWaits(Moment now) {
        List<AlarmEvent> events = new ArrayList<>();
        for (Alarm alarm : alive()) {
            if (alarm.told() || alarm.cover() != Cover.NONE || flood.stands() || sleeps(alarm, now)) {
                continue;
            }
            if (!alarm.state().isUnacknowledged() || flood.isRoom(now.monotonicMillis())) {
                events.add(step(alarm, AlarmStep.TOLD, now));
            } else {
                flood.holdBack(alarm.id());
            }
        }
        return events;
    }

    private List<AlarmEvent> tellTogether(List<Alarm> untold, Moment now) {
        flood.startStretch(now.monotonicMillis());
        List<AlarmEvent> events = new ArrayList<>(begin(Flood.begun(untold), now));
        untold.forEach(alarm -> events.add(step(alarm, AlarmStep.TOLD, "", "told together with others", now)));
        return events;
    }

    private boolean sleeps(Alarm alarm, Moment now) {
        return alarm.kind().urgency() == Urgency.ADVISORY && night.isNight(now.wallMillis());
    }

    // ---- what people ask ----

    /** A person knows of it. */
    public AlarmAnswer acknowledge(UUID id, String who, Moment now) {
        return asking.ask(id, AlarmStep.ACKNOWLEDGED, who, "", now);
    }

    /** A person has looked after what left a latched alarm. */
    public AlarmAnswer reset(UUID id, String who, Moment now) {
        return asking.ask(id, AlarmStep.RESET, who, "", now);
    }

    /** A person puts it away for a time. */
    public AlarmAnswer shelve(UUID id, String who, String reason, Duration time, Moment now) {
        AlarmAnswer answer = asking.shelve(id, who, reason, time, now);
        if (answer instanceof Done) {
            shelf.put(id, now.monotonicMillis() + time.toMillis());
        }
        return answer;
    }

    /** A person ends the shelving early. */
    public AlarmAnswer endShelving(UUID id, String who, Moment now) {
        return asking.ask(id, AlarmStep.SHELVING_ENDED, who, "", now);
    }

    /** A person takes it out of service, for work on what it watches. */
    public AlarmAnswer takeOutOfService(UUID id, String who, String reason, Moment now) {
        return asking.coverUp(id, AlarmStep.TAKEN_OUT_OF_SERVICE, who, reason, OptionalLong.empty(), now);
    }

    /** A person puts it back in service. */
    public AlarmAnswer putBackInService(UUID id, String who, Moment now) {
        return asking.ask(id, AlarmStep.PUT_BACK_IN_SERVICE, who, "", now);
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
        boolean together = step == AlarmStep.TOLD && flood.stands();
        boolean wouldRing =
                loud && !together && next.cover() == Cover.NONE && next.state().isUnacknowledged();
        boolean waits = wouldRing && (sleeps(alarm, now) || !flood.letsRing(alarm, now.monotonicMillis()));
        boolean told = !waits && (wouldRing || alarm.told() || step == AlarmStep.TOLD);
        Alarm after = alarm.stepped(
                next,
                told,
                step == AlarmStep.ACKNOWLEDGED ? who : alarm.acknowledgedBy(),
                next.cover() == Cover.NONE ? Optional.empty() : putAway,
                now.wallMillis());
        if (next.cover() != Cover.SHELVED) {
            shelf.remove(alarm.id());
        }
        if (after.isAlive()) {
            alive.put(after.key(), after);
        } else {
            alive.remove(after.key());
        }
        return new AlarmEvent(after, step, alarm.standing(), who, reason, now, told && !together, wouldRing && !waits);
    }
}
