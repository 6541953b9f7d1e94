package org.ebbwatch.store;

import static java.util.Objects.requireNonNull;

/**
 * One revision of a cell's card.
 *
 * @param revision from 1
 * @param key of the request that wrote it
 * @param requestHash of that request, to tell a repetition from another one with the same key
 * @param writtenBy who
 * @param reason why; empty where nothing was overwritten
 * @param body what stands on the card
 */
public record IntakeRow(
        String tag,
        int revision,
        String key,
        String requestHash,
        String writtenBy,
        String reason,
        String body,
        WallLabel wall) {
    public IntakeRow {
        requireNonNull(tag);
        requireNonNull(key);
        requireNonNull(requestHash);
        requireNonNull(writtenBy);
        requireNonNull(reason);
        requireNonNull(body);
        requireNonNull(wall);
    }

    /**
     * A photo of a cell.
     *
     * @param sha256 of the content, in hexadecimal
     */
    public record Photo(String tag, String sha256, String mediaType, byte[] content) {}
}
