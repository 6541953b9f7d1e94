package org.ebbwatch.sim.fault;

import java.util.ArrayList;
import java.util.List;

/**
 * Which faults wait, which are due and which stand, on event time. A step in which nothing begins or ends costs one
 * comparison. For one thread.
 */
public final class FaultSchedule {
    private static final long NEVER = Long.MAX_VALUE;

    /** What carries a fault out. */
    public interface Effect {
        /** The fault begins. */
        void begin(Fault fault);

        /** The fault ends. */
        void end(Fault fault);
    }

    private static final class Entry {
        private final Fault fault;
        private int toCome;
        private long beginMillis = NEVER;
        private long endMillis = NEVER;
        private boolean stands;

        private Entry(Fault fault) {
            this.fault = fault;
            toCome = fault.trigger().occurrence();
        }

        private long nextMillis() {
            return stands ? endMillis : beginMillis;
        }
    }

    private final List<Entry> entries = new ArrayList<>();
    private long nextMillis = NEVER;

    public FaultSchedule(List<Fault> faults) {
        faults.forEach(this::add);
    }

    /** Adds a fault whose trigger counts from now on, or from the start where it is {@link Happening#START}. */
    public void add(Fault fault) {
        Entry entry = new Entry(fault);
        if (fault.trigger().after() == Happening.START) {
            entry.beginMillis = fault.trigger().offsetMillis();
        }
        entries.add(entry);
        findNext();
    }

    /** Something happened on a channel. */
    public void happened(Happening happening, int channel, long nowMillis) {
        for (Entry entry : entries) {
            Trigger trigger = entry.fault.trigger();
            if (trigger.after() == happening && isFor(entry.fault, channel) && entry.toCome > 0) {
                entry.toCome--;
                if (entry.toCome == 0) {
                    entry.beginMillis = nowMillis + trigger.offsetMillis();
                }
            }
        }
        findNext();
    }

    private static boolean isFor(Fault fault, int channel) {
        return fault.channel() == Fault.BOARD || fault.channel() == channel;
    }

    /** Begins and ends what is due. */
    public void advance(long nowMillis, Effect effect) {
        while (nowMillis >= nextMillis) {
            Entry due = null;
            for (Entry entry : entries) {
                if (due == null || entry.nextMillis() < due.nextMillis()) {
                    due = entry;
                }
            }
            if (due.stands) {
                due.stands = false;
                due.endMillis = NEVER;
                effect.end(due.fault);
            } else {
                due.stands = true;
                long lasts = due.fault.lastsMillis();
                due.endMillis = lasts == Fault.FOR_EVER ? NEVER : due.beginMillis + lasts;
                due.beginMillis = NEVER;
                effect.begin(due.fault);
            }
            findNext();
        }
    }

    private void findNext() {
        nextMillis = NEVER;
        for (Entry entry : entries) {
            nextMillis = Math.min(nextMillis, entry.nextMillis());
        }
    }

    /** The faults that stand on a channel, or on the board for {@link Fault#BOARD}, in the scenario's order. */
    public List<Fault> standing(int channel) {
        List<Fault> standing = new ArrayList<>();
        for (Entry entry : entries) {
            if (entry.stands && entry.fault.channel() == channel) {
                standing.add(entry.fault);
            }
        }
        return standing;
    }
}
