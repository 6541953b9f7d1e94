package org.ebbwatch.rig.wire;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
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
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.OpenAllLoads;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.rig.message.SetInterval;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.rig.message.Who;

/** Every message with every component anywhere in its range. */
final class AnyMessage {
    private static final long U32 = 0xFFFF_FFFFL;

    private AnyMessage() {}

    static Arbitrary<Message> messages() {
        Arbitrary<Integer> channel = between(0, 254);
        Arbitrary<Integer> u16 = between(0, 0xFFFF);
        Arbitrary<Integer> u8 = between(0, 0xFF);
        Arbitrary<Boolean> either = Arbitraries.of(true, false);
        return Arbitraries.oneOf(
                identities(),
                readings(),
                Combinators.combine(u16, channel, Arbitraries.of(LeadOutcome.class), i32(), i32())
                        .as(LeadChecked::new),
                Combinators.combine(u16, u8).as(Done::new),
                Combinators.combine(u16, u8, between(-1, 254), Arbitraries.of(RefusalReason.class))
                        .as(Refused::new),
                Arbitraries.of(new Who(), new OpenAllLoads()),
                Combinators.combine(u32(), u32()).as(HostAlive::new),
                Combinators.combine(channel, either).as(SetLoad::new),
                channel.map(CheckLead::new),
                Combinators.combine(channel, u8).as(Blink::new),
                u8.map(Buzzer::new),
                u32().map(SetInterval::new));
    }

    static Arbitrary<Readings> readings() {
        return Arbitraries.of(true, false).flatMap(amperes -> Combinators.combine(
                        u32(), u32(), u32().filter(scan -> scan > 0), between(0, 0xFF), channelReadings(amperes))
                .flatAs((boot, millis, scan, contacts, readings) -> between(0, 64 - readings.size())
                        .map(first -> new Readings(boot, millis, scan, contacts, amperes, first, readings))));
    }

    private static Arbitrary<List<Reading>> channelReadings(boolean amperes) {
        return Combinators.combine(between(0, 127), i32(), i32(), amperes ? i32() : Arbitraries.just(0))
                .as(Reading::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(64);
    }

    private static Arbitrary<Identity> identities() {
        Arbitrary<Scales> scales =
                Combinators.combine(positive(), positive(), positive()).as(Scales::new);
        Arbitrary<Converter> converters = Combinators.combine(
                        between(Integer.MIN_VALUE, -1), between(0, Integer.MAX_VALUE), u32(), u32(), u32())
                .as(Converter::new);
        Arbitrary<ChannelIdentity> channels = Combinators.combine(
                        Arbitraries.of(ChannelRole.class),
                        Arbitraries.of(Ability.class).set(),
                        u32())
                .as(ChannelIdentity::new);
        return Combinators.combine(
                        scales,
                        converters,
                        between(0, 8),
                        between(0, 7),
                        ascii(1),
                        ascii(0),
                        between(1, 0xFFFF),
                        channels.list().ofMinSize(1).ofMaxSize(64))
                .flatAs((scale, converter, contacts, flags, serial, firmware, speed, list) -> Combinators.combine(
                                u32(),
                                Arbitraries.of(ClockKind.class),
                                Arbitraries.longs().between(SetInterval.LEAST_MILLIS, SetInterval.MOST_MILLIS),
                                u32())
                        .as((boot, clock, interval, timeout) -> new Identity(
                                boot,
                                clock,
                                (flags & 1) != 0,
                                (flags & 2) != 0,
                                (flags & 4) != 0,
                                speed,
                                interval,
                                timeout,
                                scale,
                                converter,
                                contacts,
                                serial,
                                firmware,
                                list)));
    }

    private static Arbitrary<String> ascii(int shortest) {
        return Arbitraries.strings()
                .withCharRange(' ', '~')
                .ofMinLength(shortest)
                .ofMaxLength(32);
    }

    private static Arbitrary<Integer> between(int lowest, int highest) {
        return Arbitraries.integers().between(lowest, highest);
    }

    private static Arbitrary<Integer> i32() {
        return Arbitraries.integers();
    }

    private static Arbitrary<Long> u32() {
        return Arbitraries.longs().between(0, U32);
    }

    private static Arbitrary<Long> positive() {
        return Arbitraries.longs().between(1, U32);
    }
}
