package org.ebbwatch.passage;

import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.trace.ScanRow;

/** A board's scan as the trace takes it. */
record KeptScan(BoardScan of) implements ScanRow {
    @Override
    public long bootNumber() {
        return of.bootNumber();
    }

    @Override
    public long scan() {
        return of.scan();
    }

    @Override
    public long eventMillis() {
        return of.eventMillis();
    }

    @Override
    public int channels() {
        return of.channels();
    }

    @Override
    public int[] volts() {
        return of.volts();
    }

    @Override
    public int[] celsius() {
        return of.celsius();
    }

    @Override
    public int[] amperes() {
        return of.amperesPresent() ? of.amperes() : null;
    }

    @Override
    public byte[] states() {
        return of.state();
    }
}
