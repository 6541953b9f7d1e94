package org.ebbwatch.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLongArray;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.rig.wire.FrameEncoder;

/**
 * A board of 64 cells at ten scans a second over TCP, as plain as can be: five seconds after it was heard a cell reads 65 degC,
 * and from then on another one every half second. It remembers when the frame that showed it had been sent.
 */
final class ManyChannels implements AutoCloseable {
    static final int CHANNELS = 64;

    private static final long INTERVAL_MILLIS = 100;
    private static final int FIRST_SCAN = 50;
    private static final int EVERY_SCANS = 5;
    private static final int CALM_COUNTS = 2_200;
    private static final int HOT_COUNTS = 6_500;
    private static final int VOLTS_COUNTS = 37_000;

    private final ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    private final AtomicLongArray shown = new AtomicLongArray(CHANNELS);
    private final FrameEncoder encoder = new FrameEncoder();

    ManyChannels() throws IOException {
        Thread sender = new Thread(this::serve, "board");
        sender.setDaemon(true);
        sender.start();
    }

    int port() {
        return server.getLocalPort();
    }

    /** When the last byte of the first frame that showed this channel hot was handed to the network. */
    long shownNanos(int channel) {
        return shown.get(channel);
    }

    private void serve() {
        try (Socket host = server.accept()) {
            host.setTcpNoDelay(true);
            Thread reader = new Thread(() -> drain(host), "heard");
            reader.setDaemon(true);
            reader.start();
            OutputStream out = host.getOutputStream();
            out.write(0);
            out.write(encoder.encode(identity()));
            long began = System.nanoTime();
            for (int scan = 1; !host.isClosed(); scan++) {
                long due = began + scan * INTERVAL_MILLIS * 1_000_000;
                Thread.sleep(Math.max(0, (due - System.nanoTime()) / 1_000_000));
                int hot = scan < FIRST_SCAN ? 0 : Math.min(CHANNELS, (scan - FIRST_SCAN) / EVERY_SCANS + 1);
                if (scan % 10 == 0) {
                    out.write(encoder.encode(identity()));
                }
                out.write(encoder.encode(readings(scan, hot)));
                long now = System.nanoTime();
                if (hot > 0) {
                    shown.compareAndSet(hot - 1, 0, now);
                }
            }
        } catch (IOException | InterruptedException e) {
            // The service has gone, or the bench is over.
        }
    }

    /** What the host asks is not looked at: the identity is sent once a second, and no load ever closes. */
    private static void drain(Socket host) {
        byte[] bytes = new byte[4_096];
        try (InputStream in = host.getInputStream()) {
            while (in.read(bytes) >= 0) {
                // On.
            }
        } catch (IOException e) {
            // The service has gone.
        }
    }

    private static Message readings(int scan, int hot) {
        List<Reading> all = new ArrayList<>();
        for (int channel = 0; channel < CHANNELS; channel++) {
            int flicker = (scan * 7 + channel * 13) % 5 - 2;
            all.add(new Reading(
                    Reading.VOLTS_VALID | Reading.CELSIUS_VALID,
                    VOLTS_COUNTS + flicker,
                    (channel < hot ? HOT_COUNTS : CALM_COUNTS) + flicker,
                    0));
        }
        return new Readings(1, scan * INTERVAL_MILLIS, scan, 0, false, 0, all);
    }

    private static Identity identity() {
        Set<Ability> abilities = EnumSet.of(Ability.VOLTS, Ability.CELSIUS);
        List<ChannelIdentity> channels = new ArrayList<>();
        for (int channel = 0; channel < CHANNELS; channel++) {
            channels.add(new ChannelIdentity(ChannelRole.CELL, abilities, 4_700));
        }
        return new Identity(
                1,
                ClockKind.CRYSTAL,
                false,
                false,
                false,
                1,
                INTERVAL_MILLIS,
                10_000,
                new Scales(100_000, 0, 10_000),
                new Converter(-2_000, 50_000, 2_000_000, 1_500, 500_000),
                0,
                "MANY-64",
                "bench",
                channels);
    }

    @Override
    public void close() throws IOException {
        server.close();
    }
}
