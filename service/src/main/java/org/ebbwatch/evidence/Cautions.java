package org.ebbwatch.evidence;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Phase;

/** What a reader of the record must know before believing it more than it says. */
final class Cautions {
    private final List<String> cautions = new ArrayList<>();

    private Cautions() {}

    static List<String> of(PassageRecords records, Telling telling, int simulatedSpeed) {
        var all = new Cautions();
        all.simulated(simulatedSpeed);
        all.end(telling.verdict().end());
        all.journal(telling);
        all.records(telling, records.writtenDown());
        if (!records.card().cell().switched()) {
            all.add("A person put the load on and took it off; when, the record knows from that person alone.");
        }
        all.add(
                "Wall times are labels by the clock of the host, which nobody checked; what counts is the order, and event"
                        + " time, the board's own clock.");
        ChainCheck.firstBreak(records.chain()).ifPresent(all::add);
        all.add(
                "The digests show damage. The signature shows who made the bundle only to those who know the key from elsewhere.");
        return all.cautions;
    }

    private void simulated(int speed) {
        if (speed > 0) {
            add("SIMULATED at " + speed + " times real time: no reading here comes from a cell.");
        }
    }

    private void end(Verdict.End end) {
        if (!end.over()) {
            add("The passage was not over when this was made: no verdict of emptiness.");
        } else if (end.phase().equals(Phase.WITHDRAWN.name())) {
            add("The cell was withdrawn: no verdict of emptiness.");
        }
    }

    private void journal(Telling telling) {
        count(telling, Entry.Gap.class, "gap(s) in the readings, each listed under gaps.");
        count(telling, Entry.Metered.class, "voltage(s) in the journal were typed in by a person.");
        count(
                telling,
                Entry.ProcedureChanged.class,
                "change(s) of procedure on the way; procedure is what it began with.");
        count(
                telling,
                Entry.CalibrationChanged.class,
                "change(s) of the channel's calibration on the way: volts before and after cannot be compared.");
        long boards = telling.calibrations().size();
        if (boards > 1) {
            add("What the readings rest on was told anew " + (boards - 1) + " time(s); see calibrations.");
        }
    }

    private void records(Telling telling, List<String> writtenDown) {
        if (telling.misplaced() > 0) {
            add("Readings that were judged at the time are missing from the trace: " + telling.misplaced()
                    + " entries of the journal stand at another place than then.");
        }
        if (!telling.events().equals(writtenDown)) {
            add("What was written down while the cell was watched is not what this judge makes of the same journal; see"
                    + " writtenDown.");
        }
    }

    private void count(Telling telling, Class<? extends Entry> kind, String what) {
        long count = telling.journal().stream()
                .filter(line -> kind.isInstance(line.kept().entry()))
                .count();
        if (count > 0) {
            add(count + " " + what);
        }
    }

    private void add(String caution) {
        cautions.add(caution);
    }
}
