package org.ebbwatch.sim.rack;

import java.util.List;
import org.ebbwatch.sim.scenario.StringSpec;

/**
 * Cells in series across one load. The current is searched by Newton's method within a bracket, each cell's own circuit being
 * settled for every trial. A member without a cell, or whose cell is disconnected or tripped, opens the string. A lead that
 * falls off a member is a sense lead: the chain itself stays closed.
 */
final class SeriesString {
    private static final double VOLTS_CLOSE_ENOUGH = 1e-7;
    private static final int TRIALS_MOST = 60;

    private final List<Channel> members;
    private final double ohms;
    private double amperes;

    SeriesString(StringSpec spec, List<Channel> members) {
        this.members = members;
        ohms = spec.loadOhms();
    }

    /** The channel whose switch, hand and load faults are the string's. */
    private Channel head() {
        return members.get(0);
    }

    boolean isClosed() {
        Channel head = head();
        if (head.effects.loadLost || !(head.switchClosed || head.handClosed || head.effects.loadStuck)) {
            return false;
        }
        for (int i = 0; i < members.size(); i++) {
            Occupant occupant = members.get(i).occupant;
            if (occupant == null || !occupant.isConnectedInside()) {
                return false;
            }
        }
        return true;
    }

    /** Steps every member's cell up to, not including, the end of its step. */
    void settle() {
        for (int i = 0; i < members.size(); i++) {
            if (members.get(i).occupant != null) {
                members.get(i).begin();
            }
        }
        if (!isClosed()) {
            amperes = 0;
            settleMembers();
            return;
        }
        double loadOhms = ohms * head().effects.loadFactor;
        double lowest = Double.NEGATIVE_INFINITY;
        double highest = Double.POSITIVE_INFINITY;
        for (int trial = 0; trial < TRIALS_MOST; trial++) {
            double excess = settleMembers() - amperes * loadOhms;
            double correction = excess / (loadOhms + ohmsOfMembers());
            if (Math.abs(excess) < VOLTS_CLOSE_ENOUGH) {
                return;
            }
            if (excess > 0) {
                lowest = amperes;
            } else {
                highest = amperes;
            }
            double next = amperes + correction;
            amperes = next > lowest && next < highest ? next : (lowest + highest) / 2;
        }
        settleMembers();
    }

    private double settleMembers() {
        double volts = 0;
        for (int i = 0; i < members.size(); i++) {
            Channel member = members.get(i);
            if (member.occupant != null) {
                volts += member.settle(amperes);
            }
        }
        return volts;
    }

    private double ohmsOfMembers() {
        double sum = 0;
        for (int i = 0; i < members.size(); i++) {
            Channel member = members.get(i);
            double own = member.occupant.cell.trialOhms();
            sum += own / (1 + own * member.circuit.siemens());
        }
        return sum;
    }

    /** Current through the string in the last step. */
    double amperes() {
        return amperes;
    }

    /** Heat in the string's load in a step, joules. */
    double loadJoules(double seconds) {
        return amperes * amperes * ohms * head().effects.loadFactor * seconds;
    }
}
