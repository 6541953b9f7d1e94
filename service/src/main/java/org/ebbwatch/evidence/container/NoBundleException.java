package org.ebbwatch.evidence.container;

import java.io.IOException;

/** A file is not a bundle, or one of a format this program does not know. */
public final class NoBundleException extends IOException {
    private static final long serialVersionUID = 1;

    NoBundleException(String why) {
        super(why);
    }
}
