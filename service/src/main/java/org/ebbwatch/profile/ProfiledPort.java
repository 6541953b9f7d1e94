package org.ebbwatch.profile;

import java.io.IOException;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortUnavailable;

/** A port on which a device answers as a board does. */
public final class ProfiledPort implements Port {
    private static final int LOST = -1;

    private final ProfiledBoard board;
    private final DeviceLine line;

    /**
     * A closed port.
     *
     * @param board outlives the port
     * @param line a new, closed connection
     */
    public ProfiledPort(ProfiledBoard board, DeviceLine line) {
        this.board = board;
        this.line = line;
    }

    @Override
    public void open() throws PortUnavailable {
        line.open();
        board.opened();
    }

    @Override
    public int read(byte[] into) throws IOException {
        if (!board.hasOutput() && !line.step(board)) {
            return LOST;
        }
        return board.take(into);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) {
        board.accept(bytes, offset, length);
    }

    @Override
    public String remark() {
        return board.remark();
    }

    @Override
    public void close() {
        line.close();
    }
}
