package org.ebbwatch.passage;

import java.util.Optional;
import org.ebbwatch.store.StorageException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Whether the journal can be kept, said once in the log; and when to try again, for the rack waits for each attempt. */
final class Outage {
    private static final Logger LOG = LoggerFactory.getLogger(Outage.class);
    private static final long AGAIN_AFTER_NANOS = 2_000_000_000L;

    private String trouble = "";
    private long failedNanos;

    /** Why it cannot be kept; empty while it can. */
    Optional<String> trouble() {
        return Optional.of(trouble).filter(text -> !text.isEmpty());
    }

    boolean isTimeToTry() {
        return trouble.isEmpty() || System.nanoTime() - failedNanos >= AGAIN_AFTER_NANOS;
    }

    void failed(StorageException e) {
        if (trouble.isEmpty()) {
            LOG.error("The journal cannot be kept now; watching goes on and it is tried again", e);
        }
        trouble = e.toString();
        failedNanos = System.nanoTime();
    }

    void over() {
        if (!trouble.isEmpty()) {
            LOG.info("The journal is being kept again");
            trouble = "";
        }
    }
}
