package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.calibration.BoardScale;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.Reading;

/** Makes readings of a board's scans, by what they rest on. */
final class ScanScale {
    private final BoardBasis basis;
    private final BoardScale scale;
    private final int channels;
    private final int ambientChannel;
    private final int dummyChannel;
    private final int bankChannel;

    ScanScale(BoardBasis basis) {
        this.basis = basis;
        this.scale = basis.scale();
        this.channels = basis.said().channels().size();
        this.ambientChannel = first(ChannelRole.AMBIENT);
        this.dummyChannel = first(ChannelRole.DUMMY);
        this.bankChannel = first(ChannelRole.BANK);
    }

    private int first(ChannelRole role) {
        List<ChannelIdentity> wired = basis.identity().channels();
        for (int channel = 0; channel < channels; channel++) {
            boolean ofOneLoad = basis.wiring().loadSensors().containsValue(channel);
            if (wired.get(channel).role() == role && !ofOneLoad) {
                return channel;
            }
        }
        return -1;
    }

    /** Channels that a cell's reading draws on: ambient, dummy, bank and its load's own sensor, as far as there are. */
    List<Integer> drawnOn(int channel) {
        return Stream.of(ambientChannel, dummyChannel, bankChannel, loadSensor(channel))
                .filter(each -> each >= 0 && each < channels)
                .toList();
    }

    /** The reading of one channel; for a cell of a string with the volts of the whole string, its one current and its one load. */
    Entry.Scan reading(BoardScan scan, int channel, Optional<CellString> string) {
        double volts = volts(scan, channel);
        int first = string.map(CellString::firstChannel).orElse(channel);
        int last = string.map(CellString::lastChannel).orElse(channel);
        double sum = 0;
        double amperes = amperes(scan, channel);
        boolean applied = false;
        for (int each = first; each <= last && each < scan.channels(); each++) {
            sum += volts(scan, each);
            amperes = Double.isNaN(amperes) ? amperes(scan, each) : amperes;
            applied |= has(scan, each, Reading.LOAD_APPLIED);
        }
        return new Entry.Scan(
                scan.eventMillis(),
                volts,
                expandedVolts(channel, volts, applied ? sum : 0),
                scale.resolutionVolts(channel),
                amperes,
                celsius(scan, channel),
                ambientCelsius(scan),
                celsius(scan, dummyChannel),
                bankCelsius(scan, channel),
                applied,
                suspicion(scan, channel),
                string.isPresent() ? sum : Double.NaN);
    }

    /** Volts by the board's own scale, without a calibration; NaN where not read. */
    double ownVolts(BoardScan scan, int channel) {
        return has(scan, channel, Reading.VOLTS_VALID) ? scale.volts(scan.volts()[channel]) : Double.NaN;
    }

    double ambientCelsius(BoardScan scan) {
        return celsius(scan, ambientChannel);
    }

    /** Degrees of a channel; NaN where there is no such channel, or none to believe. */
    double celsius(BoardScan scan, int channel) {
        boolean believed = channel >= 0
                && channel < scan.channels()
                && has(scan, channel, Reading.CELSIUS_VALID)
                && !has(scan, channel, Reading.SENSOR_OPEN);
        return believed ? scale.celsius(scan.celsius()[channel]) : Double.NaN;
    }

    private double volts(BoardScan scan, int channel) {
        return has(scan, channel, Reading.VOLTS_VALID) ? scale.volts(channel, scan.volts()[channel]) : Double.NaN;
    }

    /** With what the leads take between the terminals and where they are measured while the load draws {@code acrossVolts}. */
    private double expandedVolts(int channel, double volts, double acrossVolts) {
        double leads = basis.wiring().leadShares().getOrDefault(channel, 0.0) * acrossVolts;
        double expanded = scale.expandedVolts(channel, Double.isNaN(volts) ? 0 : volts);
        return leads == 0 || Double.isNaN(leads) ? expanded : StrictMath.hypot(expanded, leads);
    }

    private double amperes(BoardScan scan, int channel) {
        boolean read = scan.amperesPresent() && has(scan, channel, Reading.AMPERES_VALID);
        return read ? scale.amperes(scan.amperes()[channel]) : Double.NaN;
    }

    private int loadSensor(int channel) {
        return basis.wiring().loadSensors().getOrDefault(channel, -1);
    }

    /** The hotter of the bank and the load's own sensor; a sensor that cannot be believed says nothing. */
    private double bankCelsius(BoardScan scan, int channel) {
        double bank = celsius(scan, bankChannel);
        double own = celsius(scan, loadSensor(channel));
        return Double.isNaN(bank) || own > bank ? own : bank;
    }

    private static Suspicion suspicion(BoardScan scan, int channel) {
        if (has(scan, channel, Reading.SENSOR_OPEN)) {
            return Suspicion.SENSOR_OPEN;
        }
        if (has(scan, channel, Reading.CELSIUS_AT_RAIL)) {
            return Suspicion.CELSIUS_AT_RAIL;
        }
        return has(scan, channel, Reading.VOLTS_AT_RAIL) ? Suspicion.VOLTS_AT_RAIL : Suspicion.NONE;
    }

    /** Whether a channel's state has a bit. */
    static boolean has(BoardScan scan, int channel, int bit) {
        return (scan.state()[channel] & bit) != 0;
    }
}
