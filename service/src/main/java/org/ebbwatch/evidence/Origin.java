package org.ebbwatch.evidence;

import org.ebbwatch.judge.JudgeVersion;

/**
 * What made a bundle.
 *
 * @param software name and version
 * @param judgeVersion see {@link JudgeVersion}
 */
public record Origin(String software, int judgeVersion) {

    /** Name and version of this program. */
    public static final String SOFTWARE = "ebbwatch 0.1.0";

    /** This program. */
    public static Origin current() {
        return new Origin(SOFTWARE, JudgeVersion.NUMBER);
    }
}
