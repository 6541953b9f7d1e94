package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.calibration.BoardScale;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.judge.Entry;
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
    private ScanScale scale;
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
        scale = new ScanScale(now);
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
        return scale.drawnOn(channel);
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
        return scale.reading(latest, channel, string);
    }

    /** Volts of a channel by the board's own scale, without its calibration; NaN where not read. */
    double ownVolts(int channel) {
        return scale.ownVolts(latest, channel);
    }

    /** The board's own scale. */
    BoardScale ownScale() {
        return new BoardScale(basis.said());
    }

    String serialNumber() {
        return identity == null ? "" : identity.serialNumber();
    }

    boolean isAtRail(int channel) {
        return ScanScale.has(latest, channel, Reading.VOLTS_AT_RAIL);
    }

    boolean isLoadApplied(int channel) {
        return ScanScale.has(latest, channel, Reading.LOAD_APPLIED);
    }

    /** Degrees of a channel in the latest scan; NaN before the first. */
    double latestCelsius(int channel) {
        return heard && identity != null ? scale.celsius(latest, channel) : Double.NaN;
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
                heard ? scale.ambientCelsius(latest) : Double.NaN,
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
