package org.ebbwatch.passage;

import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.rig.message.Identity;

/** Where readings are kept. */
public interface TraceLog {

    /** The scales of the board's next scans. */
    void identified(String board, Identity identity);

    /** Keeps one scan; copies what it keeps. */
    void append(String board, BoardScan scan);
}
