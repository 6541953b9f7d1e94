package org.ebbwatch.evening;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.evening.rule.CellFacts;
import org.ebbwatch.evening.rule.LoadAnswer;
import org.ebbwatch.evening.rule.LoadToggle;
import org.ebbwatch.evening.rule.LoadToggle.Seen;
import org.ebbwatch.evening.rule.TouchProof;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.PassageGlance;
import org.ebbwatch.passage.PassageGlance.LeadAnswer;

/**
 * What is asked of one board in a check: its loads one after the other, then its leads, while people hold its sensors. Not
 * thread-safe: called under the rack's lock.
 */
final class BoardRound {
    private static final long LEAD_MILLIS = 15_000;

    private final String board;
    private final BoardControl control;
    private final long intervalMillis;
    private final long touchMillis;
    private final Deque<UUID> toToggle = new ArrayDeque<>();
    private final Deque<UUID> toCheck = new ArrayDeque<>();
    private final Map<UUID, LoadAnswer> answers = new HashMap<>();
    private final Map<UUID, LeadProof> leads = new HashMap<>();
    private final Map<UUID, TouchProof> touches = new HashMap<>();

    private UUID at;
    private LoadToggle toggle;
    private long leadSequence;
    private long askedMillis;
    private long beganMillis = Long.MIN_VALUE;
    private long lastMillis;
    private boolean lost;

    BoardRound(String board, BoardControl control, long intervalMillis, long touchMillis) {
        this.board = board;
        this.control = control;
        this.intervalMillis = intervalMillis;
        this.touchMillis = touchMillis;
    }

    /** A cell of the board takes part. */
    void add(PassageGlance glance, CellFacts facts) {
        UUID id = facts.passage();
        touches.put(id, new TouchProof());
        if (facts.mayToggle()) {
            toToggle.add(id);
        } else if (facts.mayCheckLead() && glance.canCheckLead()) {
            toCheck.add(id);
        }
    }

    /** Whether anything is still being asked of the board. */
    boolean isAsking() {
        return at != null || !toToggle.isEmpty() || !toCheck.isEmpty();
    }

    /** Whether there is time left for a sensor that has not risen. */
    boolean isTouching() {
        boolean timeLeft =
                !lost && touchMillis > 0 && (beganMillis == Long.MIN_VALUE || lastMillis - beganMillis < touchMillis);
        return timeLeft
                && touches.values().stream()
                        .anyMatch(touch -> touch.riseKelvin().isEmpty());
    }

    /** The board is not heard any more: nothing is asked of it again. */
    void lost() {
        if (toggle != null) {
            toggle.interrupted("the board was not heard any more");
            toggle.answer().ifPresent(answer -> answers.put(at, answer));
        }
        LoadAnswer notAsked = new LoadAnswer(LoadAnswer.Kind.INTERRUPTED, "the board was not heard any more");
        toToggle.forEach(id -> answers.put(id, notAsked));
        toToggle.clear();
        toCheck.clear();
        toggle = null;
        at = null;
        lost = true;
    }

    /**
     * A scan of the board was read.
     *
     * @param now what is known of its cells now, by passage
     * @param facts the same as the rules see it
     */
    void scanned(Map<UUID, PassageGlance> now, Map<UUID, CellFacts> facts) {
        now.values().forEach(glance -> glance.reading().ifPresent(reading -> touch(glance, reading)));
        if (lost) {
            return;
        }
        if (at == null) {
            next(now, facts);
        } else if (toggle != null) {
            toggled(now.get(at), facts.get(at));
        } else {
            checked(now.get(at));
        }
    }

    private void touch(PassageGlance glance, Scan reading) {
        lastMillis = reading.eventMillis();
        beganMillis = beganMillis == Long.MIN_VALUE ? lastMillis : beganMillis;
        TouchProof touch = touches.get(glance.card().id());
        if (touch != null && lastMillis - beganMillis < touchMillis) {
            touch.follow(lastMillis, reading.celsius(), reading.ambientCelsius());
        }
    }

    private void next(Map<UUID, PassageGlance> now, Map<UUID, CellFacts> facts) {
        while (at == null && !toToggle.isEmpty()) {
            UUID id = toToggle.remove();
            if (facts.containsKey(id) && facts.get(id).mayToggle()) {
                PassageGlance glance = now.get(id);
                at = id;
                toggle = new LoadToggle(glance.card().cell().loadOhms(), glance.internalOhms(), intervalMillis);
            }
        }
        while (at == null && !toCheck.isEmpty()) {
            UUID id = toCheck.remove();
            PassageGlance glance = now.get(id);
            boolean may = glance != null && facts.get(id).mayCheckLead();
            long before = may ? glance.lead().map(LeadAnswer::sequence).orElse(0L) : 0;
            if (may && control.checkLead(board, glance.card().channel())) {
                at = id;
                leadSequence = before;
                askedMillis = lastMillis;
            }
        }
    }

    private void toggled(PassageGlance glance, CellFacts facts) {
        if (glance == null || glance.reading().isEmpty()) {
            toggle.interrupted("its passage is over");
        } else {
            Scan read = glance.reading().get();
            boolean open = toggle.follow(new Seen(
                    read.eventMillis(), read.volts(), read.amperes(), read.resolutionVolts(), read.loadApplied()));
            if (open && facts.mayToggle()) {
                control.setLoad(board, glance.card().channel(), false);
            } else if (open) {
                toggle.interrupted("something else happened to the cell");
            }
        }
        toggle.answer().ifPresent(answer -> {
            answers.put(at, answer);
            toggle = null;
            at = null;
        });
    }

    private void checked(PassageGlance glance) {
        Optional<LeadAnswer> answer =
                Optional.ofNullable(glance).flatMap(PassageGlance::lead).filter(lead -> lead.sequence() > leadSequence);
        answer.ifPresent(lead -> leads.put(at, lead.proof()));
        if (glance == null || answer.isPresent() || lastMillis - askedMillis > LEAD_MILLIS) {
            at = null;
        }
    }

    Optional<LoadAnswer> answer(UUID passage) {
        return Optional.ofNullable(answers.get(passage));
    }

    Optional<LeadProof> lead(UUID passage) {
        return Optional.ofNullable(leads.get(passage));
    }

    Optional<TouchProof> touch(UUID passage) {
        return Optional.ofNullable(touches.get(passage));
    }
}
