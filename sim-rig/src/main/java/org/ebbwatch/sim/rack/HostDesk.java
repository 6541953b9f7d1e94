package org.ebbwatch.sim.rack;

import org.ebbwatch.rig.message.Blink;
import org.ebbwatch.rig.message.Buzzer;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;
import org.ebbwatch.rig.wire.Rejection;
import org.ebbwatch.sim.scenario.BoardSpec;

/** The board's side of the protocol: answers every request by what it asked for, DONE, or REFUSED with the reason. */
final class HostDesk implements FrameSink {
    /** Above so many degrees on a channel the board closes no load there. */
    static final double OVER_TEMPERATURE_CELSIUS = 60;

    private static final int HOST_KIND_HIGHEST = 0x7F;

    private final BoardSpec spec;
    private final Bench bench;
    private final Electronics electronics;

    HostDesk(BoardSpec spec, Bench bench, Electronics electronics) {
        this.spec = spec;
        this.bench = bench;
        this.electronics = electronics;
    }

    @Override
    public void readings(ReadingsView view) {}

    @Override
    public void message(int sequence, Message message) {
        int kind = message.kind().code();
        switch (message.kind()) {
            case WHO -> electronics.introduce();
            case HOST_ALIVE -> electronics.hostAlive((HostAlive) message);
            case SET_LOAD -> setLoad(sequence, kind, (SetLoad) message);
            case CHECK_LEAD -> checkLead(sequence, kind, ((CheckLead) message).channel());
            case BLINK -> blink(sequence, kind, (Blink) message);
            case BUZZER -> buzzer(sequence, kind, (Buzzer) message);
            case SET_INTERVAL -> setInterval(sequence, kind, (SetInterval) message);
            case OPEN_ALL_LOADS -> openAllLoads(sequence, kind);
            default -> {}
        }
    }

    @Override
    public void unknownKind(int sequence, int kind) {
        if (isHosts(kind)) {
            refuse(sequence, kind, Refused.NO_CHANNEL, RefusalReason.UNKNOWN_KIND);
        }
    }

    @Override
    public void rejected(Rejection why) {
        if (why instanceof Rejection.Malformed malformed && isHosts(malformed.kind())) {
            refuse(malformed.sequence(), malformed.kind(), Refused.NO_CHANNEL, RefusalReason.OUT_OF_RANGE);
        }
    }

    /** A board stays silent on any other kind, so that a line that echoes does no harm. */
    private static boolean isHosts(int kind) {
        return kind >= Kind.WHO.code() && kind <= HOST_KIND_HIGHEST;
    }

    private void openAllLoads(int sequence, int kind) {
        boolean switchesAny = false;
        for (int i = 0; i < bench.size(); i++) {
            switchesAny |= Introduction.isSwitched(spec, i);
        }
        if (!switchesAny) {
            refuse(sequence, kind, Refused.NO_CHANNEL, RefusalReason.NO_SUCH_ABILITY);
            return;
        }
        bench.openAllSwitches();
        done(sequence, kind);
    }

    private void setLoad(int sequence, int kind, SetLoad request) {
        int number = request.channel();
        if (isUnknown(sequence, kind, number)) {
            return;
        }
        Channel channel = bench.channel(number);
        if (!Introduction.isSwitched(spec, number)) {
            refuse(sequence, kind, number, RefusalReason.NO_SUCH_ABILITY);
        } else if (request.applied() && electronics.checksLead(number)) {
            refuse(sequence, kind, number, RefusalReason.BUSY);
        } else if (request.applied() && electronics.isHostLost()) {
            refuse(sequence, kind, number, RefusalReason.HOST_LOST);
        } else if (request.applied() && channel.occupant != null && channel.occupant.bonded) {
            refuse(sequence, kind, number, RefusalReason.WHILE_BONDED);
        } else if (request.applied() && channel.thermistor.readsAbove(OVER_TEMPERATURE_CELSIUS)) {
            refuse(sequence, kind, number, RefusalReason.OVER_TEMPERATURE);
        } else {
            if (electronics.checksLead(number)) {
                electronics.endLeadCheck();
            }
            bench.switchLoad(number, request.applied());
            done(sequence, kind);
        }
    }

    private void checkLead(int sequence, int kind, int number) {
        if (isUnknown(sequence, kind, number)) {
            return;
        }
        Channel channel = bench.channel(number);
        if (!Introduction.checksLead(spec, number)) {
            refuse(sequence, kind, number, RefusalReason.NO_SUCH_ABILITY);
        } else if (electronics.checksLead()) {
            refuse(sequence, kind, number, RefusalReason.BUSY);
        } else if (channel.occupant != null && channel.occupant.bonded) {
            refuse(sequence, kind, number, RefusalReason.WHILE_BONDED);
        } else {
            electronics.beginLeadCheck(sequence, number);
        }
    }

    private void blink(int sequence, int kind, Blink request) {
        if (isUnknown(sequence, kind, request.channel())) {
            return;
        }
        electronics.blink(request.channel(), request.seconds());
        done(sequence, kind);
    }

    private void buzzer(int sequence, int kind, Buzzer request) {
        if (!spec.buzzer()) {
            refuse(sequence, kind, Refused.NO_CHANNEL, RefusalReason.NO_SUCH_ABILITY);
            return;
        }
        electronics.buzz(request.seconds());
        done(sequence, kind);
    }

    private void setInterval(int sequence, int kind, SetInterval request) {
        if (request.isAllowed()) {
            electronics.setInterval(request.millis());
            done(sequence, kind);
        } else {
            refuse(sequence, kind, Refused.NO_CHANNEL, RefusalReason.OUT_OF_RANGE);
        }
    }

    private boolean isUnknown(int sequence, int kind, int channel) {
        boolean unknown = channel >= spec.channels().size();
        if (unknown) {
            refuse(sequence, kind, channel, RefusalReason.NO_SUCH_CHANNEL);
        }
        return unknown;
    }

    private void done(int sequence, int kind) {
        electronics.send(new Done(sequence, kind));
    }

    private void refuse(int sequence, int kind, int channel, RefusalReason reason) {
        electronics.send(new Refused(sequence, kind, channel, reason));
    }
}
