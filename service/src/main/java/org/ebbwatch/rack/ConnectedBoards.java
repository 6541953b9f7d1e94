package org.ebbwatch.rack;

import java.util.LinkedHashMap;
import java.util.Map;
import org.ebbwatch.acquire.BoardAgent;
import org.ebbwatch.acquire.LinkQuality;
import org.ebbwatch.acquire.SessionCounts;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.rig.message.Identity;

/** The boards of a rack, each with what keeps it connected. What is asked of them is asked under the rack's lock. */
final class ConnectedBoards implements BoardControl {
    private final Map<String, BoardAgent> agents = new LinkedHashMap<>();

    void add(String name, BoardAgent agent) {
        agents.put(name, agent);
    }

    void start() {
        agents.values().forEach(BoardAgent::start);
    }

    void close() throws InterruptedException {
        for (BoardAgent agent : agents.values()) {
            agent.close();
        }
    }

    @Override
    public void setLoad(String board, int channel, boolean closed) {
        agents.get(board).session().setLoad(channel, closed);
    }

    @Override
    public void openAllLoads(String board) {
        agents.get(board).session().openAllLoads();
    }

    /** What was counted on the line to a board. */
    SessionCounts counts(String board) {
        return agents.get(board).session().counts();
    }

    /** How good the lines are. */
    Map<String, LinkQuality> qualities() {
        Map<String, LinkQuality> qualities = new LinkedHashMap<>();
        agents.forEach((board, agent) -> qualities.put(board, agent.session().quality()));
        return qualities;
    }

    @Override
    public boolean checkLead(String board, int channel) {
        return agents.get(board).session().checkLead(channel).isPresent();
    }

    @Override
    public boolean blink(String board, int channel, int seconds) {
        return agents.get(board).session().blink(channel, seconds).isPresent();
    }

    /**
     * Asks every board that has a buzzer to sound it.
     *
     * @param seconds 0 to 255; 0 stops it
     * @return whether any board was asked
     */
    boolean buzz(int seconds) {
        long asked = agents.values().stream()
                .map(BoardAgent::session)
                .filter(session ->
                        session.identity().filter(Identity::hasBuzzer).isPresent())
                .filter(session -> session.buzzer(seconds).isPresent())
                .count();
        return asked > 0;
    }
}
