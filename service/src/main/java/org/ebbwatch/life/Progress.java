package org.ebbwatch.life;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.passage.BoardPulse;

/**
 * Whether readings come in: seen from outside, by scans that are new, on the host's steady clock. A board is heard in its time if
 * a new scan was seen within 5 s or three of its intervals, whichever is longer; the same by which it is SILENT. Knows no clock.
 */
final class Progress {
    private static final long LEAST_MILLIS = 5_000;
    private static final int INTERVALS = 3;

    private final Map<String, Seen> boards = new HashMap<>();
    private List<String> unheard = List.of("no board has been looked at yet");
    private boolean works;

    private record Seen(long eventMillis, long sinceMillis) {}

    /** Looks at every board the rack expects. */
    void look(List<BoardPulse> pulses, long monotonicMillis) {
        List<String> late = new ArrayList<>();
        boolean anyConnected = false;
        for (BoardPulse pulse : pulses) {
            anyConnected |= pulse.connected();
            Seen seen = boards.get(pulse.board());
            if (seen == null || seen.eventMillis() != pulse.eventMillis()) {
                seen = new Seen(pulse.eventMillis(), monotonicMillis);
                boards.put(pulse.board(), seen);
            }
            long patience = Math.max(LEAST_MILLIS, INTERVALS * pulse.intervalMillis());
            if (pulse.eventMillis() < 0 || monotonicMillis - seen.sinceMillis() > patience) {
                late.add("board " + pulse.board() + (pulse.eventMillis() < 0 ? " was never heard" : " is not heard"));
            }
        }
        works = late.size() < pulses.size() || !anyConnected;
        unheard = pulses.isEmpty() ? List.of("there is no board") : late;
    }

    /** Whether every board was heard in its time. */
    boolean isWell() {
        return unheard.isEmpty();
    }

    /** What is not well, in one line. */
    String trouble() {
        return String.join(", ", unheard);
    }

    /**
     * Whether this process does its work as far as it can: a board is heard, or none has a connection, so that there is nothing to
     * hear. Starting it again plugs nothing in.
     */
    boolean isWorking() {
        return works;
    }
}
