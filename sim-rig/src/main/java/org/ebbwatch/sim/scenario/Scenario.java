package org.ebbwatch.sim.scenario;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A simulated rack and what happens to it.
 *
 * @param seed the same seed gives the same bytes
 * @param speed event seconds per host second, 1 to 65535
 * @param intervalMillis event time between scans at the start, 10 to 60000
 * @param boards 1 to 16, each with a serial number of its own
 */
public record Scenario(long seed, int speed, long intervalMillis, List<BoardSpec> boards) {
    public Scenario {
        Ranges.within("speed", speed, 1, 65_535);
        Ranges.within("intervalMillis", intervalMillis, 10, 60_000);
        boards = List.copyOf(boards);
        Ranges.within("number of boards", boards.size(), 1, 16);
        Set<String> serialNumbers = new HashSet<>();
        for (BoardSpec board : boards) {
            if (!serialNumbers.add(board.serialNumber())) {
                throw new IllegalArgumentException("two boards have the serial number " + board.serialNumber());
            }
        }
    }

    /**
     * Reads a scenario file.
     *
     * @param yaml its text
     * @param sourceName what messages call it, as a rule the file's name
     * @throws ScenarioException with file, line, what is wrong, what is allowed and, for a mistyped key, the nearest known one
     */
    public static Scenario parse(String yaml, String sourceName) throws ScenarioException {
        return ScenarioReader.read(yaml, sourceName);
    }

    /** The same at another speed. */
    public Scenario atSpeed(int newSpeed) {
        return new Scenario(seed, newSpeed, intervalMillis, boards);
    }
}
