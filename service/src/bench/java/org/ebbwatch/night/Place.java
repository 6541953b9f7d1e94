package org.ebbwatch.night;

import org.ebbwatch.judge.Judge;

/** One channel of a night: its passage, its ledger, and what the person means to do there. */
final class Place {
    final int channel;
    final CellPlan cell;
    final Judge judge;
    final Ledger ledger;
    Truth truth;
    long announcedUntilMillis;

    Person.Errand errand = Person.Errand.NONE;
    long errandMillis;
    long earlyOffMillis = Long.MAX_VALUE;
    int timesHeld;

    Place(int channel, CellPlan cell, Judge judge, Ledger ledger) {
        this.channel = channel;
        this.cell = cell;
        this.judge = judge;
        this.ledger = ledger;
    }

    boolean isOver() {
        return judge.phase().isOver();
    }
}
