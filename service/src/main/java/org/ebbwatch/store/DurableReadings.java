package org.ebbwatch.store;

/** Where the readings go that cause what the journal says. */
@FunctionalInterface
public interface DurableReadings {

    /**
     * Returns when every reading taken so far would outlive a power cut.
     *
     * @throws StorageException if that cannot be promised
     */
    void flush();
}
