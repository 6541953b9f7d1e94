package org.ebbwatch.rig.message;

/** Why a board refuses a request. */
public enum RefusalReason {
    /** This board does not know the kind of the request. */
    UNKNOWN_KIND(1),
    /** The board has no channel of that number. */
    NO_SUCH_CHANNEL(2),
    /** The board, or the channel, lacks the ability asked for. */
    NO_SUCH_ABILITY(3),
    /** A field lies outside what the protocol or this board allows. */
    OUT_OF_RANGE(4),
    /** The board is still at an earlier request that excludes this one. */
    BUSY(5),
    /** Something on the board or its resistors is too hot for this. */
    OVER_TEMPERATURE(6),
    /** The board opened its loads on a lost host and has not heard HOST_ALIVE since. */
    HOST_LOST(7),
    /** Not while the cell's leads are bonded. */
    WHILE_BONDED(8),
    /** The board tried and its own check says that it did not work. */
    FAILED(9);

    private final int code;

    RefusalReason(int code) {
        this.code = code;
    }

    /** The byte on the wire, 1 to 9. */
    public int code() {
        return code;
    }
}
