package org.ebbwatch.judge;

/**
 * Which judge this is. Evidence names the version that made a verdict; the same version makes the same verdict of the same
 * journal on every machine.
 */
public final class JudgeVersion {

    /** One more at every change that could give some journal another phase, finding, line or figure. */
    public static final int NUMBER = 6;

    private JudgeVersion() {}
}
