package org.ebbwatch.demo;

import org.ebbwatch.judge.Act;
import org.ebbwatch.passage.RackView.PassageView;

/** What the technician's hands can do, at the rack and at the service. */
interface Hands {

    /** Says to the service that something was done, or asks it to do it. */
    void act(PassageView passage, Act act);

    /** Announces work on a channel. */
    void announce(PassageView passage, long forMillis);

    /** Bonds the leads, insulates them and puts the cell into the watch container. */
    void bond(PassageView passage);

    /** Holds a meter to the cell's terminals and writes down what it shows. */
    void meter(PassageView passage);

    /** Takes the bond off again. */
    void part(PassageView passage);
}
