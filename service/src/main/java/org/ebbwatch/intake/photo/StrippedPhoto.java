package org.ebbwatch.intake.photo;

/**
 * A photo as it is kept: the picture, byte for byte as it was compressed, and nothing else. Place, time, owner, camera, thumbnails,
 * comments and whatever follows the end are gone; which way is up stays.
 */
public record StrippedPhoto(PhotoType type, byte[] content) {
    /** A photo has at most so many bytes as it comes. */
    public static final int MOST_BYTES = 6 * 1024 * 1024;

    private static final int MOST_SIDE = 20_000;
    private static final long MOST_PIXELS = 80_000_000;

    /**
     * Strips a photo.
     *
     * @throws UnfitPhotoException if it is too large, damaged, or no photo
     */
    public static StrippedPhoto of(byte[] content) throws UnfitPhotoException {
        if (content.length > MOST_BYTES) {
            throw new UnfitPhotoException("The photo has " + content.length + " bytes; at most " + MOST_BYTES
                    + " are taken. Make it smaller.");
        }
        if (JpegSegments.isOne(content)) {
            return new StrippedPhoto(PhotoType.JPEG, new JpegSegments(content).stripped());
        }
        if (PngChunks.isOne(content)) {
            return new StrippedPhoto(PhotoType.PNG, new PngChunks(content).stripped());
        }
        throw new UnfitPhotoException("That is neither a JPEG nor a PNG, whatever it is called.");
    }

    static void requireSize(long width, long height) throws UnfitPhotoException {
        if (width < 1 || height < 1 || width > MOST_SIDE || height > MOST_SIDE || width * height > MOST_PIXELS) {
            throw new UnfitPhotoException("The photo is " + width + " by " + height + " pixels; 1 to " + MOST_SIDE
                    + " a side and " + MOST_PIXELS / 1_000_000 + " million in all are taken. Make it smaller.");
        }
    }
}
