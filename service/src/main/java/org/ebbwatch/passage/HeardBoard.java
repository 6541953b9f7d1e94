package org.ebbwatch.passage;

import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.trace.codec.Sha256;

/**
 * What the volts and degrees of some readings rest on.
 *
 * @param board the rack's name for it
 * @param channel the one the passage was on
 * @param bootNumber as the board counts its starts
 * @param basis what the board said of itself, and what was known beyond it
 * @param basisSha256 of the text {@link BasisText} makes of it, 64 hexadecimal digits
 */
public record HeardBoard(String board, int channel, long bootNumber, BoardBasis basis, String basisSha256) {

    /** Scales, uncertainties and channels as the board said. */
    public Identity identity() {
        return basis.said();
    }

    /** SHA-256 of the text {@link IdentityText} makes of the identity. */
    public String identitySha256() {
        return Sha256.of(IdentityText.write(identity())).toString();
    }
}
