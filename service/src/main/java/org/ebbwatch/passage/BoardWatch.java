package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.calibration.BoardScale;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Reading;

/** What is known of one board: who it is, how its counts convert, and its latest scan. */
final class BoardWatch {
    private final String name;
    private Identity identity;
    private BoardBasis basis;
    private BoardScale scale;
    private int ambientChannel = -1;
    private int dummyChannel = -1;
    private int bankChannel = -1;
    private LinkState link = LinkState.WAITING;
    private String detail = "";
    private BoardScan latest;
    private long wallMillis;
    private boolean heard;
    private boolean silent;
    private boolean clockOdd;
    private long losses;

    BoardWatch(String name) {
        this.name = name;
    }

    /** From now on readings rest on this. */
    void rest(BoardBasis now) {
        basis = now;
        identity = now.identity();
        scale = now.scale();
        ambientChannel = first(ChannelRole.AMBIENT);
        dummyChannel = first(ChannelRole.DUMMY);
        bankChannel = first(ChannelRole.BANK);
    }

    /** What its readings rest on; empty before it said who it is. */
    Optional<BoardBasis> basis() {
        return Optional.ofNullable(basis);
    }

    void link(LinkState state, String why) {
        losses += state == LinkState.LOST && link != LinkState.LOST ? 1 : 0;
        link = state;
        detail = why;
    }

    void heard(BoardScan scan) {
        latest = scan;
        heard = true;
        silent = false;
        wallMillis = scan.arrival().wallMillis();
    }

    /** Nothing has been heard for the time allowed. */
    void silent() {
        silent = true;
    }

    void clockOdd(boolean now) {
        clockOdd = now;
    }

    long eventMillis() {
        return heard ? latest.eventMillis() : -1;
    }

    String name() {
        return name;
    }

    int contactInputs() {
        return identity == null ? 0 : identity.contactInputs();
    }

    boolean isKnown() {
        return identity != null;
    }

    int channels() {
        return identity.channels().size();
    }

    /** Channels that a cell's reading draws on: ambient, dummy, bank and its load's own sensor, as far as there are. */
    List<Integer> drawnOn(int channel) {
        return Stream.of(ambientChannel, dummyChannel, bankChannel, loadSensor(channel))
                .filter(each -> each >= 0 && each < identity.channels().size())
                .toList();
    }

    private int loadSensor(int channel) {
        return basis.wiring().loadSensors().getOrDefault(channel, -1);
    }

    /** The hotter of the bank and the load's own sensor; a sensor that cannot be believed says nothing. */
    private double bankCelsius(int channel) {
        double bank = celsius(bankChannel);
        double own = celsius(loadSensor(channel));
        return Double.isNaN(bank) || own > bank ? own : bank;
    }

    int simulatedSpeed() {
        return identity.simulated() ? identity.speed() : 0;
    }

    boolean can(int channel, Ability ability) {
        return channel < identity.channels().size()
                && identity.channels().get(channel).abilities().contains(ability);
    }

    boolean isCell(int channel) {
        return identity != null
                && channel >= 0
                && channel < identity.channels().size()
                && identity.channels().get(channel).role() == ChannelRole.CELL;
    }

    /** The channel whose switch closes a string's load; empty where none of them has one. */
    Optional<Integer> switchOf(CellString string) {
        return IntStream.rangeClosed(string.firstChannel(), string.lastChannel())
                .boxed()
                .filter(channel -> can(channel, Ability.LOAD_SWITCH))
                .findFirst();
    }

    /** A thermometer in the watch container. */
    boolean isWatch(int channel) {
        return identity != null
                && channel >= 0
                && channel < identity.channels().size()
                && identity.channels().get(channel).role() == ChannelRole.WATCH;
    }

    /** The lowest volts the board can read. */
    double lowestVolts() {
        return identity.scales().volts(identity.converter().lowestCounts());
    }

    long intervalMillis() {
        return identity.intervalMillis();
    }

    /** The calibrated reading of one channel in the latest scan. */
    Entry.Scan reading(int channel) {
        return reading(channel, Optional.empty());
    }

    /** The same for a cell of a string: volts of the whole string, its one current and its one load. */
    Entry.Scan reading(int channel, Optional<CellString> string) {
        int state = latest.state()[channel];
        double volts = volts(channel);
        int first = string.map(CellString::firstChannel).orElse(channel);
        int last = string.map(CellString::lastChannel).orElse(channel);
        double sum = 0;
        double amperes = amperes(channel);
        boolean applied = false;
        for (int each = first; each <= last && each < latest.channels(); each++) {
            sum += volts(each);
            amperes = Double.isNaN(amperes) ? amperes(each) : amperes;
            applied |= (latest.state()[each] & Reading.LOAD_APPLIED) != 0;
        }
        return new Entry.Scan(
                latest.eventMillis(),
                volts,
                expandedVolts(channel, volts, applied ? sum : 0),
                scale.resolutionVolts(channel),
                amperes,
                celsius(channel),
                celsius(ambientChannel),
                celsius(dummyChannel),
                bankCelsius(channel),
                applied,
                suspicion(state),
                string.isPresent() ? sum : Double.NaN);
    }

    private double volts(int channel) {
        boolean read = (latest.state()[channel] & Reading.VOLTS_VALID) != 0;
        return read ? scale.volts(channel, latest.volts()[channel]) : Double.NaN;
    }

    /** With what the leads take between the terminals and where they are measured while the load draws {@code acrossVolts}. */
    private double expandedVolts(int channel, double volts, double acrossVolts) {
        double leads = basis.wiring().leadShares().getOrDefault(channel, 0.0) * acrossVolts;
        double expanded = scale.expandedVolts(channel, Double.isNaN(volts) ? 0 : volts);
        return leads == 0 || Double.isNaN(leads) ? expanded : StrictMath.hypot(expanded, leads);
    }

    /** Volts of a channel by the board's own scale, without its calibration; NaN where not read. */
    double ownVolts(int channel) {
        boolean read = (latest.state()[channel] & Reading.VOLTS_VALID) != 0;
        return read ? scale.volts(latest.volts()[channel]) : Double.NaN;
    }

    /** The board's own scale. */
    BoardScale ownScale() {
        return new BoardScale(basis.said());
    }

    String serialNumber() {
        return identity == null ? "" : identity.serialNumber();
    }

    boolean isAtRail(int channel) {
        return (latest.state()[channel] & Reading.VOLTS_AT_RAIL) != 0;
    }

    boolean isLoadApplied(int channel) {
        return (latest.state()[channel] & Reading.LOAD_APPLIED) != 0;
    }

    private double amperes(int channel) {
        boolean read = latest.amperesPresent() && (latest.state()[channel] & Reading.AMPERES_VALID) != 0;
        return read ? scale.amperes(latest.amperes()[channel]) : Double.NaN;
    }

    /** Degrees of a channel in the latest scan; NaN before the first. */
    double latestCelsius(int channel) {
        return heard && identity != null ? celsius(channel) : Double.NaN;
    }

    private double celsius(int channel) {
        if (channel < 0 || channel >= latest.channels()) {
            return Double.NaN;
        }
        int state = latest.state()[channel];
        boolean believed = (state & Reading.CELSIUS_VALID) != 0 && (state & Reading.SENSOR_OPEN) == 0;
        return believed ? scale.celsius(latest.celsius()[channel]) : Double.NaN;
    }

    private static Suspicion suspicion(int state) {
        if ((state & Reading.SENSOR_OPEN) != 0) {
            return Suspicion.SENSOR_OPEN;
        }
        if ((state & Reading.CELSIUS_AT_RAIL) != 0) {
            return Suspicion.CELSIUS_AT_RAIL;
        }
        return (state & Reading.VOLTS_AT_RAIL) != 0 ? Suspicion.VOLTS_AT_RAIL : Suspicion.NONE;
    }

    private int first(ChannelRole role) {
        for (int channel = 0; channel < identity.channels().size(); channel++) {
            boolean ofOneLoad = basis.wiring().loadSensors().containsValue(channel);
            if (identity.channels().get(channel).role() == role && !ofOneLoad) {
                return channel;
            }
        }
        return -1;
    }

    BoardGlance glance() {
        return new BoardGlance(
                name,
                link == LinkState.CONNECTED && heard && !silent,
                silent ? "silent; " + detail : detail,
                clockOdd,
                losses,
                isKnown() ? intervalMillis() : 0,
                isKnown() ? channels() : 0,
                heard ? celsius(ambientChannel) : Double.NaN,
                basis == null ? List.of() : basis.calibrations());
    }

    BoardPulse pulse() {
        return new BoardPulse(
                name, link == LinkState.CONNECTED, eventMillis(), identity == null ? 0 : identity.intervalMillis());
    }

    BoardView view() {
        return new BoardView(
                name,
                link,
                detail,
                serialNumber(),
                identity == null ? 0 : simulatedSpeed(),
                eventMillis(),
                wallMillis,
                heard ? latest.contacts() : 0);
    }

    /** The latest reading of every channel. */
    List<Entry.Scan> readings() {
        return IntStream.range(0, latest.channels()).mapToObj(this::reading).toList();
    }

    private OptionalLong calibratedWallMillis(int channel) {
        return basis.calibrations().stream()
                .filter(calibration -> calibration.channel() == channel)
                .mapToLong(Calibration::madeWallMillis)
                .findFirst();
    }

    List<ChannelView> channelViews() {
        List<ChannelView> views = new ArrayList<>();
        if (!heard || identity == null) {
            return views;
        }
        for (int channel = 0; channel < latest.channels(); channel++) {
            Entry.Scan reading = reading(channel);
            views.add(new ChannelView(
                    name,
                    channel,
                    identity.channels().get(channel).role(),
                    reading.volts(),
                    reading.expandedVolts(),
                    reading.celsius(),
                    reading.amperes(),
                    reading.loadApplied(),
                    calibratedWallMillis(channel)));
        }
        return views;
    }
}
