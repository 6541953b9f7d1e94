package org.ebbwatch.time;

/** How far the host's wall time can be believed. Wall time is only ever a label; nothing is judged by it. */
public enum WallQuality {
    /** The host was set by a time service or carries its own clock chip. */
    KNOWN,
    /** The host may show any time at all, such as the one it was switched off at. */
    UNSYNCHRONISED
}
