package org.ebbwatch.acquire;

import org.ebbwatch.rig.wire.ReadingsView;

/** Puts the frames of a scan together: parts of one scan share boot number, board time and scan number. */
final class ScanAssembly {

    enum Outcome {
        /** The scan still lacks channels. */
        LACKING,
        /** The scan is whole; {@link #scan} holds its channels until the next part. */
        COMPLETE,
        /** The part names channels the board does not have. */
        MISFIT
    }

    private final BoardScan scan;
    private final long everyChannel;
    private long bootNumber;
    private long boardMillis;
    private long number;
    private int contacts;
    private boolean amperesPresent;
    private long present;
    private long partial;

    /** For a board of 1 to 64 channels. */
    ScanAssembly(int channels) {
        scan = new BoardScan(channels);
        everyChannel = -1L >>> (Long.SIZE - channels);
    }

    Outcome add(ReadingsView view) {
        int first = view.firstChannel();
        int count = view.count();
        if (first + count > scan.channels()) {
            return Outcome.MISFIT;
        }
        if (!continues(view)) {
            abandon();
            bootNumber = view.bootNumber();
            boardMillis = view.boardMillis();
            number = view.scan();
            contacts = view.contacts();
            amperesPresent = true;
        }
        amperesPresent &= view.amperes();
        for (int i = 0; i < count; i++) {
            scan.channel(first + i, view.state(i), view.volts(i), view.celsius(i), view.amperes(i));
            present |= 1L << (first + i);
        }
        if (present != everyChannel) {
            return Outcome.LACKING;
        }
        present = 0;
        return Outcome.COMPLETE;
    }

    /** Gives up a scan begun; it counts as partial. */
    void abandon() {
        if (present != 0) {
            partial++;
            present = 0;
        }
    }

    BoardScan scan() {
        return scan;
    }

    int contacts() {
        return contacts;
    }

    boolean amperesPresent() {
        return amperesPresent;
    }

    /** Scans of which not every channel came. */
    long partial() {
        return partial;
    }

    private boolean continues(ReadingsView view) {
        return present != 0
                && view.scan() == number
                && view.boardMillis() == boardMillis
                && view.bootNumber() == bootNumber;
    }
}
