package org.ebbwatch.trace;

/**
 * A stretch of a tail that was no whole record: what a power cut tore, or worse.
 *
 * @param offset first byte
 * @param bytes how many
 * @param atEnd whether nothing whole came after it, as after a power cut
 */
public record TailDamage(long offset, long bytes, boolean atEnd) {}
