package org.ebbwatch.store;

/**
 * Something could not be stored or read back: the disk is full, read-only or damaged, or the database is away. What was to
 * be stored is kept in memory and tried again with the next attempt, unless the message says otherwise.
 */
public final class StorageException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public StorageException(String message) {
        super(message);
    }

    /** The message is followed by that of the cause, so that one line tells a person all. */
    public StorageException(String message, Throwable cause) {
        super(message + ": " + cause.getMessage(), cause);
    }
}
