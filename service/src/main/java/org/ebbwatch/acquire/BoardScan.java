package org.ebbwatch.acquire;

import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.LastSeen;

/**
 * One complete scan of a board. One object serves every scan of a session, so that a fast simulated rack makes no garbage:
 * whoever keeps a scan, or its arrays, beyond the call that hands it over copies what it keeps.
 *
 * <p>Volts, degrees and amperes are counts of the scales in the board's {@link org.ebbwatch.rig.message.Identity}; the state
 * bits are those of {@link org.ebbwatch.rig.message.Reading}. Arrays are indexed by channel, from 0.
 */
public final class BoardScan {

    private final int[] volts;
    private final int[] celsius;
    private final int[] amperes;
    private final byte[] state;
    private LastSeen seen;
    private int contacts;
    private boolean amperesPresent;

    /** A scan of so many channels, all counts 0. */
    public BoardScan(int channels) {
        volts = new int[channels];
        celsius = new int[channels];
        amperes = new int[channels];
        state = new byte[channels];
    }

    /** Sets everything but the channels. */
    public BoardScan stamp(LastSeen newSeen, int newContacts, boolean newAmperesPresent) {
        seen = newSeen;
        contacts = newContacts;
        amperesPresent = newAmperesPresent;
        return this;
    }

    /** Sets one channel; amperes are 0 where there are none. */
    public void channel(int channel, int newState, int newVolts, int newCelsius, int newAmperes) {
        state[channel] = (byte) newState;
        volts[channel] = newVolts;
        celsius[channel] = newCelsius;
        amperes[channel] = newAmperes;
    }

    /** How many channels. */
    public int channels() {
        return state.length;
    }

    /** Where the scan stands on the board's clock, on event time and on the host's clocks. */
    public LastSeen seen() {
        return seen;
    }

    /** The board's boot number, u32; 0 where it cannot count. */
    public long bootNumber() {
        return seen.bootNumber();
    }

    /** The scan's number within the boot, u32. */
    public long scan() {
        return seen.scan();
    }

    /** Event time in milliseconds since the board was first seen. */
    public long eventMillis() {
        return seen.eventMillis();
    }

    /** Contact inputs: bit n is 1 where input n is closed. */
    public int contacts() {
        return contacts;
    }

    /** Whether the amperes were measured at all. */
    public boolean amperesPresent() {
        return amperesPresent;
    }

    /** When the last frame of the scan arrived; its wall time is a label only. */
    public HostTime arrival() {
        return seen.host();
    }

    /** Volts in counts, by channel; shared. */
    public int[] volts() {
        return volts;
    }

    /** Degrees in counts, by channel; shared. */
    public int[] celsius() {
        return celsius;
    }

    /** Amperes in counts, discharge positive, by channel; shared. */
    public int[] amperes() {
        return amperes;
    }

    /** State bits, by channel; shared. */
    public byte[] state() {
        return state;
    }
}
