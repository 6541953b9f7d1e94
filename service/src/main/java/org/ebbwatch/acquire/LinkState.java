package org.ebbwatch.acquire;

/** How it stands between the service and a board. */
public enum LinkState {
    /** The port cannot be opened now, or is open and the board has not said yet who it is. */
    WAITING,
    /** The board has proven who it is; its scans count and it takes requests. */
    CONNECTED,
    /** What answers is not the board expected here, or speaks another version: it is sent nothing but the question who it is. */
    REFUSED,
    /** The port was open and is no more. */
    LOST
}
