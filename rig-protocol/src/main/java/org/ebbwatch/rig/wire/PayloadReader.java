package org.ebbwatch.rig.wire;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.Blink;
import org.ebbwatch.rig.message.Buzzer;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.HostAlive;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.OpenAllLoads;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;

/** Reads the payload of every message but READINGS, which {@link ReadingsView} reads in place. */
final class PayloadReader {
    private final ByteBuffer in;

    private PayloadReader(ByteBuffer in) {
        this.in = in;
    }

    /**
     * Reads one payload; bytes after its fields are ignored.
     *
     * @throws IllegalArgumentException if it is too short or holds a number that the protocol does not allow
     */
    static Message read(Kind kind, byte[] bytes, int offset, int length) {
        ByteBuffer in = ByteBuffer.wrap(bytes, offset, length).order(ByteOrder.LITTLE_ENDIAN);
        try {
            return new PayloadReader(in).read(kind);
        } catch (BufferUnderflowException e) {
            throw new IllegalArgumentException("payload is shorter than its fields", e);
        }
    }

    private Message read(Kind kind) {
        return switch (kind) {
            case IDENTITY -> identity();
            case LEAD_CHECKED ->
                new LeadChecked(u16(), u8(), oneOf(LeadOutcome.values(), LeadOutcome::code), i32(), i32());
            case DONE -> new Done(u16(), u8());
            case REFUSED -> refused();
            case WHO -> new Who();
            case HOST_ALIVE -> new HostAlive(u32(), u32());
            case SET_LOAD -> new SetLoad(u8(), bool());
            case CHECK_LEAD -> new CheckLead(u8());
            case BLINK -> new Blink(u8(), u8());
            case BUZZER -> new Buzzer(u8());
            case SET_INTERVAL -> new SetInterval(u32());
            case OPEN_ALL_LOADS -> new OpenAllLoads();
            case READINGS -> throw new IllegalArgumentException("readings are read in place");
        };
    }

    private Identity identity() {
        long bootNumber = u32();
        ClockKind clockKind = oneOf(ClockKind.values(), ClockKind::code);
        int flags = u8();
        return new Identity(
                bootNumber,
                clockKind,
                (flags & 1) != 0,
                (flags & 2) != 0,
                (flags & 4) != 0,
                u16(),
                u32(),
                u32(),
                new Scales(u32(), u32(), u32()),
                new Converter(i32(), i32(), u32(), u32(), u32()),
                u8(),
                text(),
                text(),
                channels());
    }

    private List<ChannelIdentity> channels() {
        int count = u8();
        List<ChannelIdentity> channels = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            channels.add(new ChannelIdentity(oneOf(ChannelRole.values(), ChannelRole::code), abilities(), u32()));
        }
        return channels;
    }

    private Set<Ability> abilities() {
        int mask = u8();
        Set<Ability> abilities = EnumSet.noneOf(Ability.class);
        for (Ability ability : Ability.values()) {
            if ((mask & ability.mask()) != 0) {
                abilities.add(ability);
            }
        }
        return abilities;
    }

    private Refused refused() {
        int requestSequence = u16();
        int requestKind = u8();
        int channel = u8();
        return new Refused(
                requestSequence,
                requestKind,
                channel == 0xFF ? Refused.NO_CHANNEL : channel,
                oneOf(RefusalReason.values(), RefusalReason::code));
    }

    private <E extends Enum<E>> E oneOf(E[] all, ToIntFunction<E> codeOf) {
        int code = u8();
        for (E one : all) {
            if (codeOf.applyAsInt(one) == code) {
                return one;
            }
        }
        throw new IllegalArgumentException(all[0].getDeclaringClass().getSimpleName() + " " + code + " is not known");
    }

    private boolean bool() {
        int number = u8();
        if (number > 1) {
            throw new IllegalArgumentException("a yes or no is " + number + ", allowed is 0 or 1");
        }
        return number == 1;
    }

    private String text() {
        byte[] ascii = new byte[u8()];
        in.get(ascii);
        return new String(ascii, StandardCharsets.ISO_8859_1);
    }

    private int u8() {
        return in.get() & 0xFF;
    }

    private int u16() {
        return in.getShort() & 0xFFFF;
    }

    private long u32() {
        return in.getInt() & 0xFFFF_FFFFL;
    }

    private int i32() {
        return in.getInt();
    }
}
