package org.ebbwatch.passage;

/** Where people ask for things. Safe for use by several threads; requests are taken one after the other. */
public interface RackDesk {
    /** A key is at least so long, so that nobody hits upon another's. */
    int KEY_SHORTEST = 8;

    /** A key is at most so long. */
    int KEY_LONGEST = 200;

    /**
     * Does what is asked, wholly or not at all. What was done once is not done again for the same key, but answered again, across
     * restarts too; what was refused is judged anew.
     *
     * @param key made by whoever asks, 8 to 200 characters, another one for each request
     */
    DeskAnswer ask(DeskRequest request, String key);
}
