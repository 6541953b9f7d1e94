package org.ebbwatch.trace;

import java.io.IOException;

/** Takes scans, one after another. */
@FunctionalInterface
interface ScanSink {

    void scan(BoardBoot boot, ScanRow row) throws IOException;
}
