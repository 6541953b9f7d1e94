package org.ebbwatch.acquire;

import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.Identity;

/** Tells the listener how the link stands, and only when that is news. */
final class LinkNews {

    private static final String UNGUARDED =
            " It does not open its loads by itself when this service ends: do not leave them closed unwatched.";

    private final String board;
    private final BoardListener listener;
    private LinkState state;
    private String detail;
    private String remark = "";

    LinkNews(String board, BoardListener listener) {
        this.board = board;
        this.listener = listener;
    }

    void tell(LinkState newState, String newDetail) {
        if (newState == state && newDetail.equals(detail)) {
            return;
        }
        state = newState;
        detail = newDetail;
        listener.link(board, newState, newDetail);
    }

    /** The board has proven who it is. */
    void connected(Identity identity) {
        String simulated = identity.simulated() ? ", simulated at speed " + identity.speed() : "";
        boolean unguarded = identity.hostTimeoutMillis() == 0
                && identity.channels().stream().anyMatch(channel -> channel.can(Ability.LOAD_SWITCH));
        tell(
                LinkState.CONNECTED,
                "Board " + identity.serialNumber() + ", firmware " + identity.firmware() + simulated + "."
                        + (unguarded ? UNGUARDED : "") + (remark.isEmpty() ? "" : " " + remark));
    }

    /** Nobody says who is there; what the port remarks goes before the usual reason. */
    void waiting(String why) {
        tell(LinkState.WAITING, remark.isEmpty() ? why : remark);
    }

    /** Takes what the port remarks about the board; true where it is something else than before. */
    boolean remark(String newRemark) {
        boolean changed = !newRemark.equals(remark);
        remark = newRemark;
        return changed;
    }
}
