package org.ebbwatch.passage;

/** What the rack may ask of a board. Requests are sent and forgotten: the next readings show what became of them. */
public interface BoardControl {

    void setLoad(String board, int channel, boolean closed);

    /** Opens every load of a board, by its relay where it has one. */
    void openAllLoads(String board);

    /** Says whether the request was sent. */
    boolean checkLead(String board, int channel);

    /**
     * Lets the lamp at a channel blink; says whether the request was sent.
     *
     * @param seconds 0 to 255; 0 stops it
     */
    boolean blink(String board, int channel, int seconds);
}
