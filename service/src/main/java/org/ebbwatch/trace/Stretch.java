package org.ebbwatch.trace;

import org.ebbwatch.trace.codec.Sha256;
import org.ebbwatch.trace.codec.ValueKinds;

/**
 * What the samples that follow have in common.
 *
 * @param bootNumber as the board counts its starts
 * @param kinds what the 32 bits of a reading are
 * @param identityHash names the board's identity, by whose scales counts are to be read
 */
public record Stretch(long bootNumber, ValueKinds kinds, Sha256 identityHash) {}
