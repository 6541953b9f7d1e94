package org.ebbwatch.evidence;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.evidence.Verdict.Change;
import org.ebbwatch.evidence.Verdict.Found;
import org.ebbwatch.evidence.Verdict.Measured;
import org.ebbwatch.evidence.Verdict.Moment;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;

/** A passage being judged entry by entry, for the verdict that comes of it. */
final class Folding {
    private final Judge judge;
    private final List<Change> phases = new ArrayList<>();
    private final List<Found> findings = new ArrayList<>();
    private final List<Measured> results = new ArrayList<>();
    private final Map<FindingKind, Integer> standing = new EnumMap<>(FindingKind.class);
    private Procedure procedure;
    private Optional<Soak> soak = Optional.empty();
    private Optional<RestPeak> restPeak = Optional.empty();
    private Entry.Scan lastVoltage;
    private long lastVoltageSequence;
    private long entries;
    private long readings;

    Folding(CellCard card, Procedure procedure) {
        this.judge = new Judge(card, procedure);
        this.procedure = procedure;
    }

    /** Released or withdrawn: nothing that comes changes the verdict. */
    boolean isOver() {
        return judge.phase().isOver();
    }

    /**
     * Judges the next entry.
     *
     * @throws IllegalArgumentException if event time falls
     */
    Outcome take(long sequence, Entry entry) {
        entries++;
        if (entry instanceof Entry.Scan scan) {
            readings++;
            if (!Double.isNaN(scan.volts())) {
                lastVoltage = scan;
                lastVoltageSequence = sequence;
            }
        } else if (entry instanceof Entry.ProcedureChanged changed) {
            procedure = changed.procedure();
        }
        Outcome outcome = judge.fold(entry);
        for (Outcome.Event event : outcome.events()) {
            note(new Moment(sequence, entry.eventMillis()), event);
        }
        if (entry instanceof Entry.Scan scan) {
            extremes(sequence, scan);
        }
        return outcome;
    }

    private void extremes(long sequence, Entry.Scan scan) {
        if (judge.phase() == Phase.TIE_OFF) {
            soak = soak.map(before -> before.with(scan));
        } else if (judge.phase() == Phase.REST && !Double.isNaN(scan.volts())) {
            RestPeak peak = RestPeak.of(sequence, scan, procedure.rest().limitVolts());
            restPeak = restPeak.filter(before -> !peak.isAbove(before)).or(() -> Optional.of(peak));
        }
    }

    private void note(Moment at, Outcome.Event event) {
        if (event instanceof Outcome.PhaseChanged changed) {
            phases.add(new Change(
                    at.sequence(),
                    at.eventMillis(),
                    changed.from().name(),
                    changed.to().name(),
                    changed.reason()));
            measured(changed.from(), changed.to());
            if (changed.to() == Phase.TIE_OFF) {
                soak = Optional.of(Soak.begins(at.eventMillis()));
            } else if (changed.to() == Phase.REST) {
                restPeak = Optional.empty();
            }
        } else if (event instanceof Outcome.Raised raised) {
            Finding finding = raised.finding();
            standing.put(finding.kind(), findings.size());
            findings.add(found(at.sequence(), finding, Optional.empty()));
        } else if (event instanceof Outcome.Cleared cleared) {
            int index = standing.remove(cleared.kind());
            Found was = findings.get(index);
            findings.set(
                    index,
                    new Found(
                            was.sequence(),
                            was.kind(),
                            was.eventMillis(),
                            was.phase(),
                            was.seen(),
                            was.limit(),
                            was.unit(),
                            was.line(),
                            Optional.of(at)));
        }
    }

    private static Found found(long sequence, Finding finding, Optional<Moment> cleared) {
        return new Found(
                sequence,
                finding.kind().name(),
                finding.eventMillis(),
                finding.phase().name(),
                finding.seen(),
                finding.limit(),
                finding.unit(),
                finding.line(),
                cleared);
    }

    private void measured(Phase from, Phase to) {
        if (lastVoltage == null) {
            return;
        }
        if (from == Phase.DRAIN && to == Phase.REST) {
            measured("underLoad", procedure.drain().limitVolts());
        } else if (from == Phase.REST && to == Phase.TIE_OFF) {
            measured("rested", procedure.rest().limitVolts());
        } else if (to == Phase.RELEASED) {
            measured("parted", procedure.rest().limitVolts());
        }
    }

    private void measured(String what, double limitVolts) {
        results.add(new Measured(
                what,
                lastVoltageSequence,
                lastVoltage.eventMillis(),
                lastVoltage.volts(),
                lastVoltage.expandedVolts(),
                limitVolts));
    }

    /** How warm the cell was in its last tie-off; empty: it had none. */
    Optional<Soak> soak() {
        return soak;
    }

    /** The highest voltage of the last rest; empty: it had none. */
    Optional<RestPeak> restPeak() {
        return restPeak;
    }

    /** The verdict so far. */
    Verdict verdict() {
        return new Verdict(
                phases,
                findings,
                results,
                new Verdict.End(
                        judge.phase().name(),
                        judge.reason(),
                        judge.phase().isOver(),
                        judge.round(),
                        judge.ampereHours(),
                        judge.wattHours(),
                        entries,
                        readings));
    }
}
