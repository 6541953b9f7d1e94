package org.ebbwatch.acquire;

import java.util.Optional;
import org.ebbwatch.acquire.Happening.Scan;
import org.ebbwatch.rig.message.BoardMessage;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;

/** A session between a scripted board and a recording listener, on time that passes by hand. */
abstract class SessionBench {

    final RecordingListener listener = new RecordingListener();
    final Frames.HostSide host = new Frames.HostSide();
    final FrameEncoder boardEncoder = new FrameEncoder();
    BoardSession session = session(Optional.of("EB-1"));
    long hostMillis;

    BoardSession session(Optional<String> serialNumber) {
        return new BoardSession("left", serialNumber, EventClock.fresh(), listener, host::accept);
    }

    HostTime now() {
        return new HostTime("host", hostMillis * 1_000_000, hostMillis, WallQuality.KNOWN);
    }

    /** The board sends. */
    void board(BoardMessage message) {
        byte[] frame = boardEncoder.encode(message);
        session.accept(frame, 0, frame.length, now());
    }

    /** Time passes with a look at the port every 100 ms. */
    void pass(long millis) {
        for (long passed = 0; passed < millis; passed += 100) {
            hostMillis += 100;
            session.tick(now());
        }
    }

    void connect(int speed, int channels) {
        session.opened(now());
        board(Frames.identity("EB-1", 7, speed, channels));
        listener.news();
        host.messages();
    }

    void scan(long boot, long scan) {
        board(Frames.readings(boot, 1_000 * scan, scan, 0, 2));
    }

    static Scan heard(long boot, long scan, long eventMillis) {
        return new Scan(boot, scan, eventMillis, (int) scan * 100);
    }
}
