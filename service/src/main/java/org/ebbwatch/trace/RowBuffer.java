package org.ebbwatch.trace;

/** A scan to be filled in and handed on, again and again. */
final class RowBuffer implements ScanRow {

    long bootNumber;
    long scan;
    long eventMillis;
    int channels;
    boolean withAmperes;
    int[] volts = {};
    int[] celsius = {};
    int[] amperes = {};
    byte[] states = {};

    void makeRoomFor(int itsChannels) {
        channels = itsChannels;
        if (states.length < itsChannels) {
            volts = new int[itsChannels];
            celsius = new int[itsChannels];
            amperes = new int[itsChannels];
            states = new byte[itsChannels];
        }
    }

    @Override
    public long bootNumber() {
        return bootNumber;
    }

    @Override
    public long scan() {
        return scan;
    }

    @Override
    public long eventMillis() {
        return eventMillis;
    }

    @Override
    public int channels() {
        return channels;
    }

    @Override
    public int[] volts() {
        return volts;
    }

    @Override
    public int[] celsius() {
        return celsius;
    }

    @Override
    public int[] amperes() {
        return withAmperes ? amperes : null;
    }

    @Override
    public byte[] states() {
        return states;
    }
}
