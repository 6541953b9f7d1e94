package org.ebbwatch.intake.photo;

/** A photo cannot be kept; the message says why, and is fit for whoever sent it. */
public final class UnfitPhotoException extends Exception {
    private static final long serialVersionUID = 1L;

    UnfitPhotoException(String message) {
        super(message);
    }
}
