package org.ebbwatch.profile;

import java.io.ByteArrayOutputStream;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.IntPredicate;
import org.ebbwatch.rig.message.Blink;
import org.ebbwatch.rig.message.BoardMessage;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.OpenAllLoads;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameEncoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;

/**
 * The board a device stands for: the host's frames come in, a board's frames go out. It lives as long as the service, over any
 * number of connections, so that its scans are numbered on; it has no thread, no port and no clock.
 *
 * <p>A device cannot count its starts: its boot number is 0. It is asked nothing when the host asks who it is; that is answered
 * as soon as the device has shown on this connection that it is there. Whatever it says that cannot be used goes on as an empty
 * frame, so that it is counted where every bad frame is.
 *
 * <p>Safe for use by two threads, one that reads and one that writes.
 */
public final class ProfiledBoard {
    private static final byte[] BAD_FRAME = {1, 0};
    private static final long HIGHEST_SCAN = 0xFFFF_FFFFL;

    private final Description device;
    private final String serialNumber;
    private final FrameEncoder encoder = new FrameEncoder();
    private final BlockingQueue<LoadOrder> orders = new LinkedBlockingQueue<>();
    private FrameDecoder decoder = new FrameDecoder(new Incoming());
    private ByteArrayOutputStream output = new ByteArrayOutputStream();
    private long intervalMillis;
    private long scan;
    private int unansweredWho;
    private boolean present;
    private boolean hostAlive;
    private String remark = "";

    /**
     * The board of a device not yet heard.
     *
     * @param serialNumber 1 to 32 characters of printable ASCII
     */
    public ProfiledBoard(Description device, String serialNumber) {
        this.device = device;
        this.serialNumber = serialNumber;
        this.intervalMillis = device.intervalMillis();
    }

    /** A connection begins: whatever was under way on the last one is forgotten. */
    public synchronized void opened() {
        decoder = new FrameDecoder(new Incoming());
        output = new ByteArrayOutputStream();
        orders.clear();
        unansweredWho = 0;
        present = false;
        remark = "";
    }

    /** Bytes of the host. */
    public synchronized void accept(byte[] bytes, int offset, int length) {
        decoder.accept(bytes, offset, length);
    }

    /** Whether something waits to be taken. */
    public synchronized boolean hasOutput() {
        return output.size() > 0;
    }

    /** Hands over bytes of the board; returns how many. */
    public synchronized int take(byte[] into) {
        byte[] all = output.toByteArray();
        int count = Math.min(all.length, into.length);
        System.arraycopy(all, 0, into, 0, count);
        output.reset();
        output.write(all, count, all.length - count);
        return count;
    }

    /**
     * The device has scanned.
     *
     * @param boardMillis its clock, u32; 0 where it has none
     * @param contacts bit n is 1 where contact input n is closed
     * @param raws the raw numbers; NaN for one that did not come
     * @param loadApplied whether the load of a channel is connected
     */
    public synchronized void scanned(long boardMillis, int contacts, double[] raws, IntPredicate loadApplied) {
        isThere();
        scan = scan == HIGHEST_SCAN ? 1 : scan + 1;
        boolean amperes =
                device.channels().stream().anyMatch(channel -> channel.amperes().isPresent());
        send(new Readings(0, boardMillis, scan, contacts, amperes, 0, Counts.readings(device, raws, loadApplied)));
    }

    /** The device was switched on again: its scans are numbered anew, and it says so. */
    public synchronized void restarted() {
        scan = 0;
        if (present && unansweredWho == 0) {
            send(device.identity(serialNumber, intervalMillis));
        }
    }

    /** The device said something that cannot be used. */
    public synchronized void unusable() {
        output.writeBytes(BAD_FRAME);
    }

    /** What a person should know about the device now; empty: nothing. */
    public synchronized void remark(String newRemark) {
        remark = newRemark;
    }

    /** What was remarked last. */
    public synchronized String remark() {
        return remark;
    }

    /** Event time between scans that the host wants, milliseconds. */
    public synchronized long intervalMillis() {
        return intervalMillis;
    }

    /** Whether the host has said since the last call that it lives. */
    public synchronized boolean takeHostAlive() {
        boolean heard = hostAlive;
        hostAlive = false;
        return heard;
    }

    /** The oldest order not yet taken, waiting so long at most for one. */
    public Optional<LoadOrder> awaitOrder(long millis) throws InterruptedException {
        return Optional.ofNullable(orders.poll(millis, TimeUnit.MILLISECONDS));
    }

    /** An order was carried out, and the device shows it. */
    public synchronized void done(LoadOrder order) {
        send(new Done(order.requestSequence(), order.requestKind()));
    }

    /** An order was not carried out. */
    public synchronized void refuse(LoadOrder order, int channel, RefusalReason reason) {
        send(new Refused(order.requestSequence(), order.requestKind(), channel, reason));
    }

    private void isThere() {
        present = true;
        answerWho();
    }

    /** One answer for each question, so that an identity sent unasked is known for what it is. */
    private void answerWho() {
        while (present && unansweredWho > 0) {
            unansweredWho--;
            send(device.identity(serialNumber, intervalMillis));
        }
    }

    private void order(int sequence, SetLoad wanted) {
        if (!hasChannel(wanted.channel())
                || !device.channels().get(wanted.channel()).switchesLoad()) {
            refuseForLack(sequence, wanted, wanted.channel());
        } else {
            put(new LoadOrder(sequence, wanted.kind().code(), wanted.channel(), wanted.applied()));
        }
    }

    private void openAll(int sequence, OpenAllLoads all) {
        if (device.channels().stream().noneMatch(ProfiledChannel::switchesLoad)) {
            refuse(sequence, all, Refused.NO_CHANNEL, RefusalReason.NO_SUCH_ABILITY);
        } else {
            put(new LoadOrder(sequence, all.kind().code(), LoadOrder.EVERY_CHANNEL, false));
        }
    }

    private void put(LoadOrder order) {
        orders.add(order);
    }

    private void changeInterval(int sequence, SetInterval wanted) {
        if (wanted.millis() < device.leastIntervalMillis() || wanted.millis() > device.mostIntervalMillis()) {
            refuse(sequence, wanted, Refused.NO_CHANNEL, RefusalReason.OUT_OF_RANGE);
        } else {
            intervalMillis = wanted.millis();
            send(new Done(sequence, wanted.kind().code()));
        }
    }

    private void refuseForLack(int sequence, HostMessage request, int channel) {
        refuse(
                sequence,
                request,
                channel,
                hasChannel(channel) ? RefusalReason.NO_SUCH_ABILITY : RefusalReason.NO_SUCH_CHANNEL);
    }

    private boolean hasChannel(int channel) {
        return channel < device.channels().size();
    }

    private void refuse(int sequence, HostMessage request, int channel, RefusalReason reason) {
        send(new Refused(sequence, request.kind().code(), channel, reason));
    }

    private void send(BoardMessage message) {
        output.writeBytes(encoder.encode(message));
    }

    /** Sorts what the host asks. */
    private final class Incoming implements FrameSink {
        @Override
        public void readings(ReadingsView view) {
            throw new IllegalStateException("a host sends no readings");
        }

        @Override
        public void unknownKind(int sequence, int kind) {
            send(new Refused(sequence, kind, Refused.NO_CHANNEL, RefusalReason.UNKNOWN_KIND));
        }

        @Override
        public void message(int sequence, Message message) {
            if (message instanceof Who) {
                unansweredWho++;
                answerWho();
            } else if (message instanceof HostAlive) {
                hostAlive = true;
            } else if (message instanceof SetLoad wanted) {
                order(sequence, wanted);
            } else if (message instanceof OpenAllLoads all) {
                openAll(sequence, all);
            } else if (message instanceof SetInterval wanted) {
                changeInterval(sequence, wanted);
            } else if (message instanceof CheckLead lead) {
                refuseForLack(sequence, lead, lead.channel());
            } else if (message instanceof Blink blink) {
                refuseForLack(sequence, blink, blink.channel());
            } else if (message instanceof HostMessage other) {
                refuse(sequence, other, Refused.NO_CHANNEL, RefusalReason.NO_SUCH_ABILITY);
            }
        }
    }
}
