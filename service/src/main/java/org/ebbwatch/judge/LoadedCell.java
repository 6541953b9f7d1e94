package org.ebbwatch.judge;

import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.LoadTolerance;

/**
 * A cell and what it is drained by: by its card, and once its string was opened by the load of its own that a person names. In a
 * string the current is that of the whole: the volts of all its cells over the one load. Where one of them is not known, neither
 * is the current.
 */
final class LoadedCell {
    private final CellCard card;
    private double loadOhms;
    private boolean switched;
    private boolean inString;
    private boolean owesLoad;
    private double stringVolts = Double.NaN;
    private double expandedLoadShare;

    LoadedCell(CellCard card) {
        this.card = card;
        this.loadOhms = card.loadOhms();
        this.switched = card.switched();
        this.inString = card.inString();
        this.expandedLoadShare =
                card.loadTolerance().orElse(LoadTolerance.USUAL).expandedShare();
    }

    void look(Scan scan) {
        stringVolts = scan.stringVolts();
    }

    /** The string was opened for good; without its name nobody knows of a load of the cell's own. */
    void leaveString() {
        owesLoad |= inString && card.string().isPresent();
        inString = false;
    }

    /** A person names the load it finishes on, but not how far it may be off; ignored where it has one. */
    void finishOn(double ohms, boolean byBoard) {
        if (owesLoad) {
            loadOhms = ohms;
            switched = byBoard;
            owesLoad = false;
            expandedLoadShare = LoadTolerance.USUAL.expandedShare();
        }
    }

    /** Whether it left its string and has no load of its own yet. */
    boolean owesLoad() {
        return owesLoad;
    }

    boolean isInString() {
        return inString;
    }

    boolean switched() {
        return switched;
    }

    /** What flows through the load while the cell reads {@code volts}; NaN where that is not known. */
    double amperesAt(double volts) {
        if (inString && card.string().isPresent()) {
            return stringVolts / loadOhms;
        }
        return owesLoad ? Double.NaN : volts / loadOhms;
    }

    /** Expanded uncertainty (k = 2) of the load and its leads, relative. */
    double expandedLoadShare() {
        return expandedLoadShare;
    }

    /** Hours in which the load takes the whole rated charge at so many volts a cell. */
    double hoursAt(double meanVolts) {
        int cells = inString ? card.string().map(CellString::cells).orElse(1) : 1;
        return card.ratedAmpereHours() * loadOhms / (meanVolts * cells);
    }

    double ratedAmpereHours() {
        return card.ratedAmpereHours();
    }

    Chemistry chemistry() {
        return card.chemistry();
    }
}
