package org.ebbwatch.profile.modbus;

import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortUnavailable;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;

/** The host's end of a port, on the test's own thread: asks who is there, and reads until something has come. */
final class HostSide implements FrameSink, AutoCloseable {
    private static final long PATIENCE_NANOS = 20_000_000_000L;

    private final Port port;
    private final FrameEncoder encoder = new FrameEncoder();
    private final FrameDecoder decoder = new FrameDecoder(this);
    private final byte[] bytes = new byte[4_096];
    private final List<Reading> scan = new ArrayList<>();
    private Optional<Identity> identity = Optional.empty();
    private Optional<Message> answer = Optional.empty();
    private long scans;

    HostSide(Port port) throws PortUnavailable, IOException {
        this.port = port;
        port.open();
        say(new Who());
    }

    Identity identity() throws IOException {
        until(() -> identity.isPresent());
        return identity.get();
    }

    /** Reads until a scan has come that began after this call. */
    HostSide nextScan() throws IOException {
        long seen = scans;
        until(() -> scans > seen + 1);
        return this;
    }

    /** Volts or degrees of the last scan; NaN where they were not valid. */
    double volts(int channel) {
        Reading reading = scan.get(channel);
        return reading.is(Reading.VOLTS_VALID) ? identity.orElseThrow().scales().volts(reading.volts()) : Double.NaN;
    }

    double celsius(int channel) {
        Reading reading = scan.get(channel);
        return reading.is(Reading.CELSIUS_VALID)
                ? identity.orElseThrow().scales().celsius(reading.celsius())
                : Double.NaN;
    }

    boolean is(int channel, int mask) {
        return scan.get(channel).is(mask);
    }

    /** Asks for something and reads until it is answered. */
    Message ask(HostMessage request) throws IOException {
        answer = Optional.empty();
        say(request);
        until(() -> answer.isPresent());
        return answer.get();
    }

    void say(HostMessage message) throws IOException {
        byte[] frame = encoder.encode(message);
        port.write(frame, 0, frame.length);
    }

    String remark() {
        return port.remark();
    }

    long badFrames() {
        return decoder.framesBad();
    }

    void until(BooleanSupplier done) throws IOException {
        long begun = System.nanoTime();
        while (!done.getAsBoolean()) {
            if (System.nanoTime() - begun > PATIENCE_NANOS) {
                fail("nothing came; the port remarks \"" + port.remark() + "\"");
            }
            say(new HostAlive(0, scans));
            int count = port.read(bytes);
            if (count < 0) {
                throw new IOException("lost");
            }
            decoder.accept(bytes, 0, count);
        }
    }

    @Override
    public void readings(ReadingsView view) {
        scans++;
        scan.clear();
        for (int i = 0; i < view.count(); i++) {
            scan.add(new Reading(view.state(i), view.volts(i), view.celsius(i), view.amperes(i)));
        }
    }

    @Override
    public void message(int sequence, Message message) {
        if (message instanceof Identity arrived) {
            identity = Optional.of(arrived);
        } else if (message instanceof Done || message instanceof Refused) {
            answer = Optional.of(message);
        }
    }

    @Override
    public void close() {
        port.close();
    }
}
