package org.ebbwatch.alarm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.time.LastSeen;

/** A board of sixteen cells that reads what a test wants: 3.9 V and 22 degrees unless told otherwise. */
final class BenchBoard implements BoardControl {
    static final String NAME = "bench";
    static final int CELLS = 16;
    private static final int VALID = Reading.VOLTS_VALID | Reading.CELSIUS_VALID;

    private final HandClock clock;
    private final double[] celsius = new double[CELLS];
    private double ambientCelsius = 21;
    private long scans;

    BenchBoard(HandClock clock) {
        this.clock = clock;
        Arrays.fill(celsius, 22);
    }

    static Identity identity() {
        var cell = new ChannelIdentity(ChannelRole.CELL, EnumSet.of(Ability.VOLTS, Ability.CELSIUS), 0);
        var ambient = new ChannelIdentity(ChannelRole.AMBIENT, EnumSet.of(Ability.CELSIUS), 0);
        List<ChannelIdentity> channels = new ArrayList<>(Collections.nCopies(CELLS, cell));
        channels.add(ambient);
        return new Identity(
                1,
                ClockKind.CRYSTAL,
                false,
                false,
                false,
                1,
                1_000,
                5_000,
                new Scales(100_000, 0, 1_000),
                new Converter(-10_000, 60_000, 1_000_000, 1_000, 500_000),
                0,
                "EB-0001",
                "test",
                channels);
    }

    void set(int channel, double degrees) {
        celsius[channel] = degrees;
    }

    void setAmbient(double degrees) {
        ambientCelsius = degrees;
    }

    /** One more second. */
    void scan(RackWatch watch) {
        scans++;
        clock.pass(1_000);
        var scan = new BoardScan(CELLS + 1)
                .stamp(new LastSeen(scans * 1_000, 1, scans * 1_000, scans, clock.now()), 0, false);
        for (int channel = 0; channel < CELLS; channel++) {
            scan.channel(channel, VALID, 39_000, (int) Math.round(celsius[channel] * 1_000), 0);
        }
        scan.channel(CELLS, Reading.CELSIUS_VALID, 0, (int) Math.round(ambientCelsius * 1_000), 0);
        watch.scan(NAME, scan);
    }

    long eventMillis() {
        return scans * 1_000;
    }

    static CellCard cell(int channel) {
        return new CellCard("cell " + channel, Chemistry.LAYERED_OXIDE, 2, 10, false, false);
    }

    void checkInAll(RackWatch watch) {
        watch.identified(NAME, identity());
        scan(watch);
        for (int channel = 0; channel < CELLS; channel++) {
            watch.checkIn(
                    NAME,
                    channel,
                    cell(channel),
                    Procedure.careful(),
                    clock.now().wallMillis());
        }
        scan(watch);
    }

    @Override
    public void openAllLoads(String board) {}

    @Override
    public void setLoad(String board, int channel, boolean closed) {}

    @Override
    public boolean checkLead(String board, int channel) {
        return false;
    }

    @Override
    public boolean blink(String board, int channel, int seconds) {
        return false;
    }
}
