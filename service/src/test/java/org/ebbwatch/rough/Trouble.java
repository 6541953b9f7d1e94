package org.ebbwatch.rough;

import java.util.ArrayList;
import java.util.List;

/** Everything found that was promised not to happen. */
final class Trouble {
    private static final int MOST = 20;

    private final List<String> found = new ArrayList<>();
    private int count;

    synchronized void add(String what) {
        count++;
        if (found.size() < MOST) {
            found.add(what);
            System.err.println(what);
        }
    }

    void unless(boolean holds, String what) {
        if (!holds) {
            add(what);
        }
    }

    /** The first of them. */
    synchronized List<String> found() {
        return List.copyOf(found);
    }

    synchronized int count() {
        return count;
    }
}
