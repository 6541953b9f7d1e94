package org.ebbwatch.passage;

import org.ebbwatch.acquire.BoardScan;

/** Where readings are kept. */
public interface TraceLog {

    /** What the board's next scans rest on. */
    void identified(String board, BoardBasis basis);

    /** Keeps one scan; copies what it keeps. */
    void append(String board, BoardScan scan);
}
