package org.ebbwatch.trace.codec;

/** The bytes are not those of a segment this version can read; the message says in what way. */
public final class DamagedSegmentException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public DamagedSegmentException(String message) {
        super(message);
    }

    DamagedSegmentException(String message, Throwable cause) {
        super(message, cause);
    }
}
