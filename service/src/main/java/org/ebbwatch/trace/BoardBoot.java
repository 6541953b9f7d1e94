package org.ebbwatch.trace;

import java.nio.charset.StandardCharsets;
import org.ebbwatch.trace.codec.SegmentKey;
import org.ebbwatch.trace.codec.Sha256;
import org.ebbwatch.trace.codec.ValueKinds;

/**
 * What a board said of itself at one of its starts: without it, counts are no volts.
 *
 * @param board serial number
 * @param bootNumber as the board counts its starts; 0: it cannot count
 * @param kinds what its readings are
 * @param identity scales, converter, channels and all else the board said, as text of at most {@value #MOST_BYTES} bytes
 * @param identityHash SHA-256 of the identity text in UTF-8
 */
public record BoardBoot(String board, long bootNumber, ValueKinds kinds, String identity, Sha256 identityHash) {

    public static final int MOST_BYTES = 60_000;

    public BoardBoot {
        SegmentKey.requireBoardName(board);
        if (identity.getBytes(StandardCharsets.UTF_8).length > MOST_BYTES) {
            throw new IllegalArgumentException("the identity of board " + board + " is longer than 60,000 bytes");
        }
        if (!identityHash.equals(Sha256.of(identity))) {
            throw new IllegalArgumentException("the identity of board " + board + " does not fit its hash");
        }
    }

    public BoardBoot(String board, long bootNumber, ValueKinds kinds, String identity) {
        this(board, bootNumber, kinds, identity, Sha256.of(identity));
    }

    BoardBoot after(long laterBootNumber) {
        return new BoardBoot(board, laterBootNumber, kinds, identity, identityHash);
    }
}
