package org.ebbwatch.evidence;

import org.ebbwatch.judge.Entry;

/**
 * The highest V + U of a cell's last rest, the first of them. The last voltage before a phase change may be that of leads that were
 * bonded a moment before somebody said so; this one is not.
 *
 * @param sequence of the reading
 * @param limitVolts what V + U had to stay below
 */
record RestPeak(long sequence, long eventMillis, double volts, double expandedVolts, double limitVolts) {

    static RestPeak of(long sequence, Entry.Scan scan, double limitVolts) {
        return new RestPeak(sequence, scan.eventMillis(), scan.volts(), scan.expandedVolts(), limitVolts);
    }

    boolean isBelow() {
        return upper() < limitVolts;
    }

    boolean isAbove(RestPeak other) {
        return upper() > other.upper();
    }

    private double upper() {
        return volts + expandedVolts;
    }
}
