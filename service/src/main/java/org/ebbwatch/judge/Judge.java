package org.ebbwatch.judge;

import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.judge.Entry.Acted;
import org.ebbwatch.judge.Entry.Announced;
import org.ebbwatch.judge.Entry.CalibrationChanged;
import org.ebbwatch.judge.Entry.ClockJudged;
import org.ebbwatch.judge.Entry.Gap;
import org.ebbwatch.judge.Entry.JudgedAnew;
import org.ebbwatch.judge.Entry.LeadChecked;
import org.ebbwatch.judge.Entry.Metered;
import org.ebbwatch.judge.Entry.Moved;
import org.ebbwatch.judge.Entry.OwnLoad;
import org.ebbwatch.judge.Entry.ProcedureChanged;
import org.ebbwatch.judge.Entry.Reboot;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Entry.Silence;
import org.ebbwatch.judge.Entry.StringOpened;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.estimate.StepResistance;
import org.ebbwatch.judge.estimate.TimeToLimit;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * The fold of one passage: journal entries in, phases, findings and wishes out.
 *
 * <p>The same entries in the same order give the same outcomes on every machine: no clock, no randomness, no input or
 * output, {@code StrictMath} throughout. State is held here, is only ever changed by {@link #fold}, and takes less than 3 KiB
 * with the load on and less than 3.75 KiB otherwise. Not safe for use by several threads.
 *
 * <p>Nothing moves towards release on a zero alone: see {@link OpenCircuitProof}. A latched finding or HELD keeps the load
 * from closing by itself.
 */
public final class Judge {
    private final Passage passage;
    private final Reports reports;
    private final Readings readings;
    private final Acts acts;

    /** A passage that has just been opened: CHECK_IN, nothing known. */
    public Judge(CellCard card, Procedure procedure) {
        this.passage = new Passage(card, procedure);
        this.reports = new Reports(passage);
        this.readings = new Readings(passage, reports);
        this.acts = new Acts(passage);
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
        passage.reach(entry.eventMillis());
        if (entry instanceof Scan scan) {
            readings.scan(scan);
        } else if (entry instanceof Acted acted) {
            if (acts.allowed().contains(acted.act())) {
                acts.take(acted.act());
            }
        } else {
            reported(entry);
        }
        return passage.findings().takeOutcome();
    }

    private void reported(Entry entry) {
        if (entry instanceof Silence) {
            reports.silent();
        } else if (entry instanceof Gap gap) {
            reports.gap(gap.leastMillis(), gap.mostMillis());
        } else if (entry instanceof Reboot) {
            reports.interrupted();
        } else if (entry instanceof ClockJudged clock) {
            reports.clock(clock.odd());
        } else if (entry instanceof LeadChecked checked) {
            reports.leadChecked(checked.proof());
        } else if (entry instanceof Metered metered) {
            reports.metered(metered.volts());
        } else if (entry instanceof Announced announced) {
            passage.channel().announced(announced.untilMillis());
        } else if (entry instanceof Moved) {
            reports.moved();
        } else if (entry instanceof CalibrationChanged) {
            reports.recalibrated();
        } else if (entry instanceof ProcedureChanged changed) {
            reports.judgeBy(changed.procedure());
        } else if (entry instanceof JudgedAnew anew) {
            reports.judgedAnew(anew.left());
        } else if (entry instanceof StringOpened opened) {
            reports.stringOpened(opened.because());
        } else if (entry instanceof OwnLoad own) {
            passage.cell().finishOn(own.ohms(), own.switched());
        }
    }

    /** What a person may do now. Anything else is refused and changes nothing. */
    public Set<Act> allowed() {
        return acts.allowed();
    }

    /** Whether a wish to a person still stands; a shell that starts anew asks again. */
    public Set<Wish> standingWishes() {
        return passage.watch().asked();
    }

    public CellCard card() {
        return passage.card();
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

    /** Whether the load is known to be on. */
    public boolean isLoadOn() {
        return passage.load().isOn();
    }

    /** Whether the leads are bonded, so that the voltage says nothing of the cell. */
    public boolean isBonded() {
        return passage.isBonded();
    }

    /** Whether it is drained with others of its string. */
    public boolean isInString() {
        return passage.cell().isInString();
    }

    /** Whether it left its string and has no load of its own yet. */
    public boolean owesLoad() {
        return passage.cell().owesLoad();
    }

    /** Whether the board switches its load; otherwise hands do. */
    public boolean isSwitched() {
        return passage.cell().switched();
    }

    /** Whether the load should be on. */
    public boolean isLoadWanted() {
        return passage.load().wanted();
    }

    /** What the terminals say of a load that hands switch, against what was said; empty where they agree or cannot tell. */
    public Optional<LoadStep> seems() {
        return passage.channel().hand().seems();
    }

    /** Whether the load should be on and nothing keeps it from closing: no lock, and no gap across which it is still to be compared. */
    public boolean mayLoadClose() {
        return isLoadWanted() && !isLocked() && !passage.channel().gaps().isOwed();
    }

    /** Ampere hours taken out. */
    public double ampereHours() {
        return passage.channel().charge().ampereHours();
    }

    /** Expanded uncertainty (k = 2) of {@link #ampereHours}; a current that is not measured is as doubtful as the load. */
    public double expandedAmpereHours() {
        return passage.channel().charge().expandedAmpereHours();
    }

    /** Expanded uncertainty (k = 2) of {@link #wattHours}. */
    public double expandedWattHours() {
        return passage.channel().charge().expandedWattHours();
    }

    /** The cell's internal resistance as its load last went on; empty before. */
    public Optional<StepResistance.Step> internalResistance() {
        return passage.channel().own().resistance();
    }

    /** When the voltage on its load will be at the drain limit, as an interval; empty outside DRAIN or where nobody can say. */
    public Optional<TimeToLimit> limitIn() {
        return passage.limitIn();
    }

    /** Watt hours taken out at the terminals. */
    public double wattHours() {
        return passage.channel().charge().wattHours();
    }

    /** How many drains have begun. */
    public int round() {
        return passage.rounds().count();
    }

    /**
     * Milliseconds the running watch (hold, rest, tie-off, opening) has still to go, in DRAIN after the time the voltage most likely
     * takes to its limit; 0 where none runs or it is done.
     */
    public long remainingMillis() {
        return passage.remainingMillis();
    }

    /** Event time of the last entry folded. */
    public long lastMillis() {
        return passage.lastMillis();
    }
}
