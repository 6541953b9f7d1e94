package org.ebbwatch.evidence.container;

import org.ebbwatch.trace.codec.Sha256;

/**
 * One part of a bundle.
 *
 * @param path its name: 1 to 64 lower-case letters, digits, dots and dashes, a letter or digit first
 * @param bytes its length, unpacked
 * @param sha256 digest of its bytes, unpacked
 */
public record Part(String path, long bytes, Sha256 sha256) {}
