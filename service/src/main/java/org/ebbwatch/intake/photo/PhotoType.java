package org.ebbwatch.intake.photo;

/** The kinds of photos that are taken. */
public enum PhotoType {
    JPEG("image/jpeg"),
    PNG("image/png");

    private final String mediaType;

    PhotoType(String mediaType) {
        this.mediaType = mediaType;
    }

    /** Its media type. */
    public String mediaType() {
        return mediaType;
    }
}
