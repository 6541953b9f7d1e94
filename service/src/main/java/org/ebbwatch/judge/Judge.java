package org.ebbwatch.judge;

import java.util.Collection;
import java.util.EnumSet;
import java.util.Set;
import org.ebbwatch.judge.Entry.Acted;
import org.ebbwatch.judge.Entry.Announced;
import org.ebbwatch.judge.Entry.CalibrationChanged;
import org.ebbwatch.judge.Entry.ClockJudged;
import org.ebbwatch.judge.Entry.Gap;
import org.ebbwatch.judge.Entry.LeadChecked;
import org.ebbwatch.judge.Entry.Metered;
import org.ebbwatch.judge.Entry.Moved;
import org.ebbwatch.judge.Entry.ProcedureChanged;
import org.ebbwatch.judge.Entry.Reboot;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Silence;
import org.ebbwatch.judge.Entry.StringOpened;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * The fold of one passage: journal entries in, phases, findings and wishes out.
 *
 * <p>The same entries in the same order give the same outcomes on every machine: no clock, no randomness, no input or
 * output, {@code StrictMath} throughout. State is held here, is only ever changed by {@link #fold}, and takes less than 4 KiB.
 * Not safe for use by several threads.
 *
 * <p>Nothing moves towards release on a zero alone: see {@link OpenCircuitProof}. A latched finding or HELD keeps the load
 * from closing by itself.
 */
public final class Judge {
    private final CellCard card;
    private final Passage passage;

    /** A passage that has just been opened: CHECK_IN, nothing known. */
    public Judge(CellCard card, Procedure procedure) {
        this.card = card;
        this.passage = new Passage(card, procedure);
    }

    /**
     * Folds one entry.
     *
     * @throws IllegalArgumentException if event time falls
     */
    public Outcome fold(Entry entry) {
        if (entry.eventMillis() < passage.lastMillis()) {
            throw new IllegalArgumentException(
                    "event time fell from " + passage.lastMillis() + " to " + entry.eventMillis() + " ms");
        }
        if (passage.phase().isOver()) {
            return Outcome.NOTHING;
        }
        if (entry instanceof Scan scan) {
            passage.scan(scan);
        } else {
            other(entry);
        }
        return passage.findings().takeOutcome();
    }

    private void other(Entry entry) {
        passage.reach(entry.eventMillis());
        if (entry instanceof Silence) {
            passage.silent();
        } else if (entry instanceof Gap gap) {
            passage.gap(gap.leastMillis(), gap.mostMillis());
        } else if (entry instanceof Reboot) {
            passage.interrupted();
        } else if (entry instanceof ClockJudged clock) {
            passage.clock(clock.odd());
        } else if (entry instanceof LeadChecked checked) {
            passage.leadChecked(checked.proof());
        } else if (entry instanceof Acted acted) {
            if (allowed().contains(acted.act())) {
                passage.act(acted.act());
            }
        } else if (entry instanceof Metered metered) {
            passage.metered(metered.volts());
        } else if (entry instanceof Announced announced) {
            passage.announced(announced.untilMillis());
        } else if (entry instanceof Moved) {
            passage.moved();
        } else if (entry instanceof CalibrationChanged) {
            passage.recalibrated();
        } else if (entry instanceof ProcedureChanged changed) {
            passage.judgeBy(changed.procedure());
        } else if (entry instanceof StringOpened) {
            passage.stringOpened();
        }
    }

    /** What a person may do now. Anything else is refused and changes nothing. */
    public Set<Act> allowed() {
        Phase phase = passage.phase();
        if (phase.isOver()) {
            return EnumSet.noneOf(Act.class);
        }
        EnumSet<Act> acts = EnumSet.of(Act.WITHDRAW);
        switch (phase) {
            case CHECK_IN -> acts.add(Act.PUT_ON);
            case DRAIN -> {
                if (!card.switched()) {
                    acts.add(Act.PUT_ON);
                }
            }
            case REST -> {
                acts.add(Act.SPARK);
                if (passage.isRested()) {
                    acts.add(Act.TIE_OFF);
                }
            }
            case TIE_OFF -> {
                acts.add(Act.SPARK);
                if (passage.isWatched()) {
                    acts.add(Act.PART);
                }
                if (passage.isReleasable()) {
                    acts.add(Act.RELEASE);
                }
            }
            case HELD -> {
                if (passage.mayDrainAgain()) {
                    acts.add(Act.DRAIN_AGAIN);
                }
            }
            default -> throw new IllegalStateException("an open passage in " + phase);
        }
        if (passage.mayTakeOff()) {
            acts.add(Act.TAKE_OFF);
        }
        return acts;
    }

    /** Whether a wish to a person still stands; a shell that starts anew asks again. */
    public Set<Wish> standingWishes() {
        return passage.standingWishes();
    }

    public CellCard card() {
        return card;
    }

    public Phase phase() {
        return passage.phase();
    }

    /** Why the passage is in its phase. */
    public String reason() {
        return passage.reason();
    }

    /** The findings that stand. */
    public Collection<Finding> findings() {
        return passage.findings().standing();
    }

    /** Whether anything keeps the load from closing by itself. */
    public boolean isLocked() {
        return passage.isLocked();
    }

    /** Whether the load should be on. */
    public boolean isLoadWanted() {
        return passage.load().wanted();
    }

    /** Ampere hours taken out. */
    public double ampereHours() {
        return passage.charge().ampereHours();
    }

    /** Watt hours taken out at the terminals. */
    public double wattHours() {
        return passage.charge().wattHours();
    }

    /** How many drains have begun. */
    public int round() {
        return passage.round();
    }

    /** Milliseconds the running watch (hold, rest, tie-off, opening) has still to go; 0 where none runs or it is done. */
    public long remainingMillis() {
        return passage.remainingMillis();
    }

    /** Event time of the last entry folded. */
    public long lastMillis() {
        return passage.lastMillis();
    }
}
