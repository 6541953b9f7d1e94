package org.ebbwatch.evidence;

import java.nio.file.Path;

/**
 * What became of a bundle that was to be written.
 *
 * @param file where it is
 * @param became whether it was written
 * @param phase where the passage stands
 * @param readings how many the bundle holds
 */
public record Written(Path file, Became became, String phase, long readings) {

    /** Ways to end. */
    public enum Became {
        WRITTEN,
        /** The very same file was there. */
        THERE_ALREADY,
        /** Another file of that name was there and was left as it is; the new one was not kept. */
        ANOTHER_IS_THERE
    }
}
