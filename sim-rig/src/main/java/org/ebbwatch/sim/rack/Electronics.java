package org.ebbwatch.sim.rack;

import java.util.Arrays;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.sim.scenario.BoardSpec;

/** The board itself: its clock, counters, guard against a lost host, and what it sends. */
final class Electronics {
    private static final long HOST_TIMEOUT_LEAST_HOST_MILLIS = 2_000;
    private static final long LEAD_CHECK_MOST_MILLIS = 2_000;
    private static final long BOOT_NUMBER_HIGHEST = 0xFFFF_FFFFL;
    private static final byte[] DELIMITER = {0};

    private final BoardSpec spec;
    private final int speed;
    private final Bench bench;
    private final Outbox outbox;
    private final Credit credit;
    private final ReadingsFrame readings;
    private final Randomness noise;
    private final long hostTimeoutMillis;
    private final long[] blinkUntilMillis;

    private final long firstIntervalMillis;
    private long intervalMillis;
    private long eventMillis;
    private double clockMillis;
    private double clockRate = 1;
    private long bootNumber;
    private long scan;
    private int sequence;
    private int contacts;
    private boolean silent;
    private boolean off;
    private long hostHeardMillis;
    private boolean hostLost;
    private long buzzUntilMillis;
    private int leadCheckChannel = -1;
    private int leadCheckSequence;

    Electronics(BoardSpec spec, long seed, int speed, long intervalMillis, Bench bench) {
        this.spec = spec;
        this.speed = speed;
        this.intervalMillis = intervalMillis;
        firstIntervalMillis = intervalMillis;
        this.bench = bench;
        noise = Randomness.of(seed, "noise");
        outbox = new Outbox(Randomness.of(seed, "wire"));
        credit = new Credit(speed);
        readings = new ReadingsFrame(spec.channels().size(), spec.measuresAmperes());
        blinkUntilMillis = new long[spec.channels().size()];
        bootNumber = spec.bootNumber();
        hostTimeoutMillis = spec.hostTimeoutMillis() == 0
                ? 0
                : Math.max(spec.hostTimeoutMillis(), HOST_TIMEOUT_LEAST_HOST_MILLIS * speed);
        begin();
    }

    /** Lets the board's clock run to this event time. */
    void runTo(long newEventMillis) {
        clockMillis += (newEventMillis - eventMillis) * clockRate;
        eventMillis = newEventMillis;
    }

    /** Opens every load when the host has not been heard for too long. */
    void guardHost() {
        if (hostTimeoutMillis > 0 && !hostLost && eventMillis - hostHeardMillis > hostTimeoutMillis) {
            hostLost = true;
            bench.openAllSwitches();
        }
    }

    /** Reads every channel and queues the scan, then the answer to a lead check. */
    void scan() {
        if (off) {
            credit.restart(eventMillis, scan);
            return;
        }
        scan++;
        boolean amperes = spec.measuresAmperes();
        readings.begin(sequence, bootNumber, (long) clockMillis, scan, contacts);
        for (int i = 0; i < bench.size(); i++) {
            Channel channel = bench.channel(i);
            channel.read(intervalMillis / 1000.0, amperes, noise);
            readings.channel(
                    channel.state(amperes),
                    channel.input.counts(),
                    channel.thermistor.counts(),
                    channel.amperesCounts());
        }
        if (silent) {
            credit.restart(eventMillis, scan);
        } else {
            readings.end();
            sequence = (sequence + 1) & 0xFFFF;
            credit.sent(scan, eventMillis, outbox.add(readings.bytes(), readings.length()));
        }
        if (leadCheckChannel >= 0) {
            bench.channel(leadCheckChannel).checkLead(noise);
            answerLeadCheck();
        }
    }

    private void answerLeadCheck() {
        Channel channel = bench.channel(leadCheckChannel);
        send(new LeadChecked(
                leadCheckSequence,
                leadCheckChannel,
                channel.leadOutcome(),
                channel.voltsBeforePull(),
                channel.voltsDuringPull()));
        leadCheckChannel = -1;
    }

    void send(Message message) {
        if (isDeaf()) {
            return;
        }
        byte[] frame = FrameEncoder.encode(message, sequence);
        sequence = (sequence + 1) & 0xFFFF;
        outbox.add(frame, frame.length);
    }

    /** Says who the board is. The host is new, so nothing sent before will be acknowledged. */
    void introduce() {
        credit.restart(eventMillis, scan);
        send(identity());
    }

    Identity identity() {
        return Introduction.of(spec, bootNumber, speed, intervalMillis, hostTimeoutMillis);
    }

    void hostAlive(HostAlive alive) {
        hostHeardMillis = eventMillis;
        hostLost = false;
        if (alive.bootNumber() == bootNumber) {
            credit.acknowledged(alive.lastScan());
        }
    }

    boolean isHostLost() {
        return hostLost;
    }

    /** Whether a next scan at this event time keeps within the host's credit. */
    boolean mayRunTo(long nextEventMillis) {
        return isDeaf() || credit.allows(nextEventMillis);
    }

    /** Whether it neither hears nor says anything. */
    boolean isDeaf() {
        return silent || off;
    }

    /** Whether a lead check is under way, on any channel. */
    boolean checksLead() {
        return leadCheckChannel >= 0;
    }

    /** Whether a lead check is under way on this channel. */
    boolean checksLead(int channel) {
        return leadCheckChannel == channel;
    }

    /** Begins a lead check that the next scan ends, or that ends at once where the next scan is too far away. */
    void beginLeadCheck(int requestSequence, int channel) {
        leadCheckSequence = requestSequence;
        leadCheckChannel = channel;
        if (intervalMillis > LEAD_CHECK_MOST_MILLIS) {
            bench.channel(channel).checkLead(noise);
            answerLeadCheck();
        }
    }

    /** Ends a lead check before its time. */
    void endLeadCheck() {
        bench.channel(leadCheckChannel).giveUpLeadCheck();
        answerLeadCheck();
    }

    void blink(int channel, int seconds) {
        blinkUntilMillis[channel] = eventMillis + 1000L * seconds;
    }

    boolean isBlinking(int channel) {
        return eventMillis < blinkUntilMillis[channel];
    }

    void buzz(int seconds) {
        buzzUntilMillis = eventMillis + 1000L * seconds;
    }

    boolean isBuzzing() {
        return eventMillis < buzzUntilMillis;
    }

    void setInterval(long millis) {
        intervalMillis = millis;
    }

    long intervalMillis() {
        return intervalMillis;
    }

    long eventMillis() {
        return eventMillis;
    }

    long bootNumber() {
        return bootNumber;
    }

    long lastScan() {
        return scan;
    }

    Outbox outbox() {
        return outbox;
    }

    void setSilent(boolean yes) {
        silent = yes;
    }

    /** Fast by so many percent. */
    void setClockPercent(double percent) {
        clockRate = 1 + percent / 100;
    }

    void setContact(int input, boolean closed) {
        contacts = closed ? contacts | 1 << input : contacts & ~(1 << input);
    }

    /** Everything in the board's memory is gone, switches open; cells and loads put on by hand stay. */
    void powerOff() {
        off = true;
        bench.openAllSwitches();
        leadCheckChannel = -1;
        buzzUntilMillis = 0;
        Arrays.fill(blinkUntilMillis, 0);
    }

    /** Starts again: boot number one more, clock at 0, scans from 1. */
    void powerOn() {
        off = false;
        bootNumber = bootNumber == BOOT_NUMBER_HIGHEST ? 1 : bootNumber + 1;
        intervalMillis = firstIntervalMillis;
        scan = 0;
        sequence = 0;
        clockMillis = 0;
        hostHeardMillis = eventMillis;
        hostLost = false;
        begin();
    }

    private void begin() {
        if (!isDeaf()) {
            outbox.add(DELIMITER, 1);
        }
        introduce();
    }
}
