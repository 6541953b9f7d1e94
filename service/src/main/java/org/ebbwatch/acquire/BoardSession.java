package org.ebbwatch.acquire;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import org.ebbwatch.rig.message.Blink;
import org.ebbwatch.rig.message.Buzzer;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.HostMessage;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.OpenAllLoads;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;
import org.ebbwatch.rig.wire.Rejection;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.time.HostTime;

/**
 * The host's side of one board, over any number of connections. Pure: bytes and moments come in, frames go out to a consumer,
 * events to the listener; it has no thread, no port and no clock.
 *
 * <p><b>Identity first.</b> On every connection the board is asked who it is. Until it has answered, and again when its scans
 * show another boot number, its readings are dropped and no request is sent. A serial number other than the expected one, or
 * another version of the protocol, is refused. Where none is expected the first serial number proven is expected from then on; one
 * that another board of the rack has proven is refused.
 *
 * <p><b>HOST_ALIVE</b> goes out every 500 ms at real speed. At simulated speed it goes out after each complete scan, which is
 * the simulator's credit to run on; while no scan comes it goes out every 250 ms together with the question who the board
 * is, which gives credit for scans that were lost. It stops with a silence: a board that is not heard shall open its loads.
 *
 * <p><b>Silence</b> is the longer of 5 s and three intervals without a complete scan on the host's clock, scaled by the speed
 * but never below 5 s of host time; or the same length missing on the board's own clock. <b>A busy machine is no silence:</b>
 * host time is counted as {@link AttendedTime}, so that a pause counts for next to nothing and whatever waits in the port is
 * read first; event time at simulated speed never depends on the host; and clocks are compared at real speed only.
 *
 * <p>At real speed the question is asked again every 30 s, to see how long an answer takes.
 *
 * <p><b>Requests</b> end in exactly one {@link Answer}, after 2 s of attended time at the latest.
 *
 * <p>Not thread-safe: every call is made under the rack's lock.
 */
public final class BoardSession {

    private static final long ALIVE_MILLIS = 500;
    private static final long IDLE_ALIVE_MILLIS = 250;
    private static final long PARTIAL_FRAME_MILLIS = 1_000;
    private static final long ROUND_TRIP_MILLIS = 30_000;

    private static final String NOTHING_ANSWERS =
            "The port is open but nothing answers on it. Check that the board has power"
                    + " and that this is its port; `ebbwatch ports` lists them.";
    private static final String NO_IDENTITY =
            "The port is open but no board says who it is. Check the baud rate, the wiring,"
                    + " and that this is the board's port.";

    private enum State {
        CLOSED,
        ASKING,
        REFUSED,
        PROVEN
    }

    private final String board;
    private final BoardListener listener;
    private final Outgoing outgoing;
    private final IdentityQuestion question;
    private final Requests requests;
    private final ScanIntake intake;
    private final LinkNews news;
    private final LinkMeter meter = new LinkMeter();
    private final AttendedTime attended = new AttendedTime();

    private final SerialNumbers serialNumbers;
    private Optional<String> expectedSerialNumber;
    private FrameDecoder decoder = new FrameDecoder(new Incoming());
    private State state = State.CLOSED;
    private Identity identity;
    private HostTime now;
    private long bytesMillis;
    private long aliveMillis;
    private long unprovenBoot;
    private long unprovenScan;
    private long unattributedFrames;
    private long badFramesBefore;

    /**
     * A session without a connection, of the only board there is.
     *
     * @param board the name the board goes by in every event
     * @param expectedSerialNumber refuse any other; empty: take the first that answers
     * @param out takes each frame to send, whole; must not block
     */
    public BoardSession(
            String board,
            Optional<String> expectedSerialNumber,
            EventClock clock,
            BoardListener listener,
            Consumer<byte[]> out) {
        this(board, expectedSerialNumber, new SerialNumbers(), clock, listener, out);
    }

    /** The same for one of several boards. */
    public BoardSession(
            String board,
            Optional<String> expectedSerialNumber,
            SerialNumbers serialNumbers,
            EventClock clock,
            BoardListener listener,
            Consumer<byte[]> out) {
        this.board = Objects.requireNonNull(board, "board");
        this.serialNumbers = serialNumbers;
        this.expectedSerialNumber = Objects.requireNonNull(expectedSerialNumber, "expectedSerialNumber");
        this.listener = Objects.requireNonNull(listener, "listener");
        this.outgoing = new Outgoing(Objects.requireNonNull(out, "out"));
        this.question = new IdentityQuestion(outgoing);
        this.requests = new Requests(board, outgoing, listener, meter);
        this.intake = new ScanIntake(board, clock, listener, meter);
        this.news = new LinkNews(board, listener);
    }

    /** The port is open: asks the board who it is. Bytes left over from before are tolerated. */
    public void opened(HostTime moment) {
        look(moment);
        badFramesBefore += decoder.framesBad();
        meter.add(decoder);
        decoder = new FrameDecoder(new Incoming());
        unprovenScan = 0;
        ask("The port is open; the board has not said yet who it is.");
    }

    /** Bytes came, in any portion. */
    public void accept(byte[] bytes, int offset, int length, HostTime moment) {
        look(moment);
        if (state != State.CLOSED) {
            bytesMillis = attended.millis();
            decoder.accept(bytes, offset, length);
        }
    }

    /**
     * Lets time pass, whether the port is open or not; to be called at least every 100 ms or so, and, so that nothing waiting is
     * overlooked, after a read.
     */
    public void tick(HostTime moment) {
        look(moment);
        if (decoder.isWithinFrame() && attended.millis() - bytesMillis >= PARTIAL_FRAME_MILLIS) {
            decoder.giveUpPartialFrame();
        }
        requests.expire(attended.millis());
        intake.watch(attended.millis());
        switch (state) {
            case PROVEN -> keepAlive();
            case ASKING, REFUSED -> askAgain();
            case CLOSED -> {}
        }
    }

    /** The port could not be opened; {@code detail} tells a person why and what to do. */
    public void unreachable(String detail, HostTime moment) {
        look(moment);
        news.tell(LinkState.WAITING, detail);
    }

    /** The port is open no more; open requests end. */
    public void lost(String detail, HostTime moment) {
        look(moment);
        state = State.CLOSED;
        identity = null;
        intake.linkLost();
        news.tell(LinkState.LOST, detail);
        requests.abandon(attended.millis());
    }

    /** What the port remarks about the board; empty: nothing. It is told together with how the link stands. */
    public void remark(String newRemark) {
        if (news.remark(newRemark) && state == State.PROVEN) {
            news.connected(identity);
        }
    }

    /** The identity proven on this connection. */
    public Optional<Identity> identity() {
        return Optional.ofNullable(identity);
    }

    /** Counters since the session was made. */
    public SessionCounts counts() {
        return intake.counts(unattributedFrames, requests.unexpectedAnswers(), badFramesBefore + decoder.framesBad());
    }

    /** How good the line has been since the session was made. */
    public LinkQuality quality() {
        return meter.quality(decoder, counts(), intake.gaps());
    }

    /**
     * Asks to close or open a load. Like every request it returns the sequence by which its {@link Answer} is told, or nothing
     * where it was not sent because the board is not connected.
     */
    public OptionalInt setLoad(int channel, boolean applied) {
        return request(new SetLoad(channel, applied));
    }

    /** Asks for a lead check. */
    public OptionalInt checkLead(int channel) {
        return request(new CheckLead(channel));
    }

    /** Asks to blink a channel's lamp for so many seconds; 0 stops it. */
    public OptionalInt blink(int channel, int seconds) {
        return request(new Blink(channel, seconds));
    }

    /** Asks to sound the buzzer for so many seconds; 0 stops it. */
    public OptionalInt buzzer(int seconds) {
        return request(new Buzzer(seconds));
    }

    /** Asks for another interval between scans. */
    public OptionalInt setInterval(long millis) {
        return request(new SetInterval(millis));
    }

    /** Asks to open every load. */
    public OptionalInt openAllLoads() {
        return request(new OpenAllLoads());
    }

    private OptionalInt request(HostMessage message) {
        return state == State.PROVEN ? OptionalInt.of(requests.send(message, attended.millis())) : OptionalInt.empty();
    }

    private void look(HostTime moment) {
        now = Objects.requireNonNull(moment, "moment");
        attended.look(moment);
    }

    private void ask(String why) {
        state = State.ASKING;
        identity = null;
        news.tell(LinkState.WAITING, why);
        question.begin(attended.millis());
    }

    private void askAgain() {
        question.again(attended.millis());
        if (state == State.ASKING && question.overdue(attended.millis())) {
            boolean nothingCame = decoder.framesBad() + decoder.framesGood() == 0;
            news.waiting(nothingCame ? NOTHING_ANSWERS : NO_IDENTITY);
        }
    }

    private void keepAlive() {
        if (intake.silent()) {
            return;
        }
        if (intake.pace().realSpeed()) {
            aliveAfter(ALIVE_MILLIS);
            if (attended.millis() - question.askedMillis() >= ROUND_TRIP_MILLIS) {
                question.ask(attended.millis());
            }
        } else if (attended.millis() - Math.max(aliveMillis, question.askedMillis()) >= IDLE_ALIVE_MILLIS) {
            sendAlive();
            question.ask(attended.millis());
        }
    }

    private void aliveAfter(long periodMillis) {
        if (attended.millis() - aliveMillis >= periodMillis) {
            sendAlive();
        }
    }

    private void sendAlive() {
        aliveMillis = attended.millis();
        outgoing.send(new HostAlive(identity.bootNumber(), intake.lastScanSeen()));
    }

    private void readingsArrived(ReadingsView view) {
        if (state == State.PROVEN && view.bootNumber() != identity.bootNumber()) {
            intake.end();
            ask("The board was restarted and has not said yet who it is.");
            requests.abandon(attended.millis());
        }
        if (state != State.PROVEN) {
            unattributedFrames++;
            unprovenBoot = view.bootNumber();
            unprovenScan = view.scan();
        } else if (intake.take(view, now, attended.millis())) {
            aliveAfter(intake.pace().realSpeed() ? ALIVE_MILLIS : 0);
            if (intake.takeUntoldRestart()) {
                requests.abandon(attended.millis());
                question.ask(attended.millis());
            }
        }
    }

    private void identityArrived(Identity arrived) {
        boolean asked = question.answered(attended.millis(), meter);
        if (arrived.equals(identity) && (asked || arrived.bootNumber() != 0)) {
            return;
        }
        String expected = expectedSerialNumber.orElse(arrived.serialNumber());
        if (!arrived.serialNumber().equals(expected)) {
            refuse("Expected the board " + expected + " but found " + arrived.serialNumber()
                    + "; it was asked who it is and nothing else. Put the right board on this port, or correct the serial"
                    + " number in the rack file.");
            return;
        }
        Optional<String> other = serialNumbers.claim(expected, board);
        if (other.isPresent()) {
            refuse(
                    "The board on this port says it is " + expected + ", and the board " + other.get()
                            + " of the rack file has said so before; it was asked who it is and nothing else. Two boards cannot be the"
                            + " same: give this one a serial number of its own, or leave out the board that leads to it a second time.");
            return;
        }
        if (!asked) {
            intake.restartAnnounced();
        }
        requests.abandon(attended.millis());
        expectedSerialNumber = Optional.of(expected);
        state = State.PROVEN;
        identity = arrived;
        intake.begin(arrived, unprovenBoot == arrived.bootNumber() ? unprovenScan : 0);
        unprovenScan = 0;
        sendAlive();
        news.connected(arrived);
        listener.identified(board, arrived);
    }

    private void refuse(String why) {
        intake.linkLost();
        state = State.REFUSED;
        identity = null;
        news.tell(LinkState.REFUSED, why);
        requests.abandon(attended.millis());
    }

    /** Sorts what the decoder finds. */
    private final class Incoming implements FrameSink {

        @Override
        public void readings(ReadingsView view) {
            readingsArrived(view);
        }

        @Override
        public void message(int sequence, Message message) {
            if (message instanceof Identity arrived) {
                identityArrived(arrived);
            } else if (message instanceof Done done) {
                requests.done(done, attended.millis()).ifPresent(request -> {
                    if (request instanceof SetInterval granted) {
                        intake.intervalChanged(granted.millis());
                    }
                });
            } else if (message instanceof Refused refused) {
                requests.refused(refused);
            } else if (message instanceof LeadChecked checked) {
                requests.leadChecked(checked);
            }
        }

        @Override
        public void rejected(Rejection why) {
            meter.rejected(why);
            if (state == State.ASKING && why instanceof Rejection.UnknownVersion other) {
                refuse("The board speaks version " + other.version() + " of the rig protocol, this service version 1."
                        + " Install the firmware or the service that goes with the other.");
            }
        }
    }
}
