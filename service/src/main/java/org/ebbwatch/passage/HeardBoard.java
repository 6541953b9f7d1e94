package org.ebbwatch.passage;

import org.ebbwatch.rig.message.Identity;

/**
 * What a board said of itself before some readings; their volts and degrees rest on it.
 *
 * @param board the rack's name for it
 * @param channel the one the passage was on
 * @param bootNumber as the board counts its starts
 * @param identity scales, uncertainties and channels
 * @param identitySha256 of the text {@link IdentityText} makes of the identity, 64 hexadecimal digits
 */
public record HeardBoard(String board, int channel, long bootNumber, Identity identity, String identitySha256) {}
