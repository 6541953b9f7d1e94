package org.ebbwatch.evidence;

import java.util.List;
import java.util.Optional;
import org.ebbwatch.evidence.signature.SignerKey;

/** What came of verifying a file. */
public sealed interface Verification {

    /** The file cannot be read, or is no bundle, or one of a format this program does not know. */
    record Unreadable(String why) implements Verification {}

    /**
     * The bundle is not what was sealed.
     *
     * @param harms at least one
     */
    record Damaged(List<Harm> harms) implements Verification {}

    /** A part, or the container, and what is wrong with it. */
    record Harm(String part, String why) {}

    /**
     * The bundle is intact and was judged again.
     *
     * @param byVersion the judge that judged again
     * @param again what came of it
     * @param signer whose signature the bundle bears; empty: none, as in bundles of format 1
     */
    record Judged(Account account, int byVersion, Again again, Optional<SignerKey> signer) implements Verification {

        /** Whether the verdict in the bundle was made by the judge that judged again. */
        public boolean isSameJudge() {
            return account.judgeVersion() == byVersion;
        }
    }

    /** What came of judging again. */
    sealed interface Again {

        /** The same verdict, bit for bit. */
        record Same() implements Again {}

        /** Another verdict; {@code first} says where they part. */
        record Different(String first) implements Again {}

        /** This judge cannot judge it: it was made by another that knows other things. */
        record Impossible(String why) implements Again {}
    }

    /**
     * What a person should know of an intact bundle.
     *
     * @param passage the passage's id
     * @param tag the cell's tag; whatever its writer wanted it to be
     * @param judgeVersion that made the verdict
     * @param simulatedSpeed 0 for a real cell, else how fast the simulator ran
     * @param bytes of the whole file
     * @param parts how many, the manifest among them
     * @param firstUtc label of the first reading; empty where there is none
     * @param lastUtc label of the last
     */
    record Account(
            String passage,
            String tag,
            String software,
            int judgeVersion,
            int simulatedSpeed,
            long bytes,
            int parts,
            long readings,
            Optional<String> firstUtc,
            Optional<String> lastUtc,
            String phase,
            String reason,
            int phaseChanges,
            int findings,
            List<String> cautions) {}
}
