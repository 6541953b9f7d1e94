package org.ebbwatch.acquire;

/** Tells the listener how the link stands, and only when that is news. */
final class LinkNews {

    private final String board;
    private final BoardListener listener;
    private LinkState state;
    private String detail;

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
}
