package org.ebbwatch.passage;

/** What the rack may ask of a board. Requests are sent and forgotten: the next readings show what became of them. */
public interface BoardControl {

    void setLoad(String board, int channel, boolean closed);

    /** Says whether the request was sent. */
    boolean checkLead(String board, int channel);
}
