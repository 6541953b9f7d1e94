package org.ebbwatch.demo;

import java.util.Optional;
import java.util.Set;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.scenario.ChannelSpec;

/**
 * One cell of the story.
 *
 * @param spec what it is
 * @param loadOhms the resistor it is drained through
 * @param fault what is scripted to go wrong, on whatever channel the cell stands
 * @param must the findings one of which has to be raised on it; empty for a sound cell
 * @param may findings that may follow from those
 * @param released whether it ends as emptied
 */
record StoryCell(
        CellSpec spec,
        double loadOhms,
        Optional<Fault> fault,
        Set<FindingKind> must,
        Set<FindingKind> may,
        boolean released) {

    static StoryCell sound(CellSpec.Builder spec, double loadOhms) {
        return new StoryCell(spec.done(), loadOhms, Optional.empty(), Set.of(), Set.of(), true);
    }

    StoryCell finds(FindingKind kind, FindingKind... mayFollow) {
        return new StoryCell(spec, loadOhms, fault, Set.of(kind), Set.of(mayFollow), released);
    }

    StoryCell goesWrong(Fault what) {
        return new StoryCell(spec, loadOhms, Optional.of(what), must, may, released);
    }

    StoryCell isHeldBack() {
        return new StoryCell(spec, loadOhms, fault, must, may, false);
    }

    ChannelSpec channel() {
        return ChannelSpec.switched(spec, loadOhms);
    }

    /** What a person writes on the card when it is checked in. */
    CellCard card() {
        Chemistry chemistry =
                switch (spec.chemistry()) {
                    case NMC -> Chemistry.LAYERED_OXIDE;
                    case LFP -> Chemistry.LFP;
                };
        return new CellCard(spec.tag(), chemistry, spec.ratedAmpereHours(), loadOhms, true, false);
    }
}
