package org.ebbwatch.profile.text;

import org.ebbwatch.profile.ProfiledBoard;

/** From the bytes of a device to the scans of its board, over any number of connections. Pure; for one thread. */
final class TextScans {
    private static final int REMARKED_AFTER_LINES = 3;

    private final LineReader reader;
    private final RestartWatch restarts = new RestartWatch();
    private LineCutter cutter;
    private ProfiledBoard board;
    private long nanos;
    private int refusedInSuccession;

    TextScans(TextProfile profile) {
        reader = new LineReader(profile);
        opened();
    }

    /** A connection begins. */
    void opened() {
        cutter = new LineCutter(new Incoming());
        refusedInSuccession = 0;
    }

    /**
     * Takes the next bytes and tells the board what they hold.
     *
     * @param moment when they came, nanoseconds of the host's monotonic clock
     */
    void accept(byte[] bytes, int count, long moment, ProfiledBoard into) {
        board = into;
        nanos = moment;
        cutter.accept(bytes, count, moment);
    }

    private void take(LineScan.Scan scan) {
        refusedInSuccession = 0;
        board.remark("");
        long millis = scan.millis().orElse(0);
        if (scan.millis().isPresent() && restarts.restarted(millis, nanos)) {
            board.restarted();
        }
        board.scanned(millis, 0, scan.raws(), channel -> false);
    }

    private void refuse(String why) {
        board.unusable();
        refusedInSuccession++;
        if (refusedInSuccession == REMARKED_AFTER_LINES) {
            board.remark(why);
        }
    }

    /** What the cutter hands on. */
    private final class Incoming implements LineCutter.Lines {
        @Override
        public void line(String line) {
            LineScan read = reader.read(line);
            if (read instanceof LineScan.Scan scan) {
                take(scan);
            } else if (read instanceof LineScan.Refused refused) {
                refuse(refused.why());
            }
        }

        @Override
        public void dropped(String why) {
            refuse(why);
        }
    }
}
