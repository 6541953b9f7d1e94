package org.ebbwatch.night;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Queue;
import org.ebbwatch.calibration.BoardScale;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;
import org.ebbwatch.sim.rack.SimBoard;

/**
 * The host's side of one simulated board, as short as can be: readings are taken from the board in counts and calibrated as
 * the service does, requests go over the wire protocol, of the board's frames only the answers to lead checks are looked at.
 */
final class Shell implements FrameSink {
    /** A lead check was answered. */
    record Answer(int channel, LeadProof proof) {}

    private final SimBoard sim;
    private final FrameEncoder encoder = new FrameEncoder();
    private final FrameDecoder decoder = new FrameDecoder(this);
    private final byte[] bytes = new byte[4096];
    private final Identity identity;
    private final BoardScale scale;
    private final int ambient;
    private final int dummy;
    private final int bank;
    private final Deque<Integer> checksToAsk = new ArrayDeque<>();
    private final Queue<Answer> answers = new ArrayDeque<>();
    private int checking = -1;
    private double ambientCelsius;
    private double dummyCelsius;
    private double bankCelsius;

    Shell(SimBoard sim) {
        this.sim = sim;
        identity = sim.identity();
        scale = new BoardScale(identity);
        ambient = first(ChannelRole.AMBIENT);
        dummy = first(ChannelRole.DUMMY);
        bank = first(ChannelRole.BANK);
    }

    private int first(ChannelRole role) {
        for (int channel = 0; channel < identity.channels().size(); channel++) {
            if (identity.channels().get(channel).role() == role) {
                return channel;
            }
        }
        return -1;
    }

    private void send(HostMessage message) {
        byte[] frame = encoder.encode(message);
        sim.receive(frame, 0, frame.length);
    }

    void setInterval(long millis) {
        send(new SetInterval(millis));
    }

    void setLoad(int channel, boolean closed) {
        send(new SetLoad(channel, closed));
    }

    /** Asks for a lead check; says whether the board has one. */
    boolean checkLead(int channel) {
        boolean can = identity.channels().get(channel).abilities().contains(Ability.LEAD_CHECK);
        if (can && !checksToAsk.contains(channel)) {
            checksToAsk.add(channel);
        }
        return can;
    }

    /** Sends what waits, and takes what the board sent; boards hold a long conversation in vain while they are silent. */
    void exchange() {
        if (checking < 0 && !checksToAsk.isEmpty() && !sim.isSilent()) {
            checking = checksToAsk.remove();
            send(new CheckLead(checking));
        }
        for (int length = sim.transmit(bytes); length > 0; length = sim.transmit(bytes)) {
            if (checking >= 0) {
                decoder.accept(bytes, 0, length);
            }
        }
    }

    /** Nothing that was asked will be answered. */
    void forget() {
        checking = -1;
        checksToAsk.clear();
    }

    /** The next answer, null if there is none. */
    Answer answer() {
        return answers.poll();
    }

    @Override
    public void readings(ReadingsView view) {}

    @Override
    public void message(int sequence, Message message) {
        if (message instanceof LeadChecked checked) {
            checking = -1;
            answers.add(new Answer(checked.channel(), proof(checked.outcome())));
        } else if (message instanceof org.ebbwatch.rig.message.Refused refused && refused.channel() == checking) {
            checking = -1;
        }
    }

    private static LeadProof proof(LeadOutcome outcome) {
        return switch (outcome) {
            case ATTACHED -> LeadProof.ATTACHED;
            case OPEN -> LeadProof.OPEN;
            case NOT_DONE -> LeadProof.NOT_DONE;
        };
    }

    /** Takes what the whole board shares of the last scan; before {@link #scan}. */
    void look() {
        ambientCelsius = ambient < 0 ? Double.NaN : celsius(sim.reading(ambient));
        dummyCelsius = dummy < 0 ? Double.NaN : celsius(sim.reading(dummy));
        bankCelsius = bank < 0 ? Double.NaN : celsius(sim.reading(bank));
    }

    /** The calibrated reading of a channel in the last scan. */
    Entry.Scan scan(int channel, long eventMillis) {
        Reading reading = sim.reading(channel);
        int state = reading.state();
        double volts = (state & Reading.VOLTS_VALID) != 0 ? scale.volts(reading.volts()) : Double.NaN;
        return new Entry.Scan(
                eventMillis,
                volts,
                scale.expandedVolts(Double.isNaN(volts) ? 0 : volts),
                scale.resolutionVolts(),
                (state & Reading.AMPERES_VALID) != 0 ? scale.amperes(reading.amperes()) : Double.NaN,
                celsius(reading),
                ambientCelsius,
                dummyCelsius,
                bankCelsius,
                (state & Reading.LOAD_APPLIED) != 0,
                suspicion(state));
    }

    private double celsius(Reading reading) {
        boolean valid = (reading.state() & Reading.CELSIUS_VALID) != 0 && (reading.state() & Reading.SENSOR_OPEN) == 0;
        return valid ? scale.celsius(reading.celsius()) : Double.NaN;
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

    double expandedVolts(double volts) {
        return scale.expandedVolts(volts);
    }
}
