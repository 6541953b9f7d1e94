package org.ebbwatch.rig.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.LongFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class MessageRangesTest {
    private static final long U32 = 4_294_967_295L;
    private static final Reading READING = new Reading(1, 2, 3, 0);
    private static final ChannelIdentity CELL = new ChannelIdentity(ChannelRole.CELL, Set.of(Ability.VOLTS), 0);
    private static final Scales SCALES = new Scales(1, 1, 1);
    private static final Converter CONVERTER = new Converter(-1, 1, 0, 0, 0);

    private static Arguments range(String component, long lowest, long highest, LongFunction<Object> maker) {
        return Arguments.of(component, lowest, highest, maker);
    }

    private static Readings readings(long boot, long millis, long scan, int contacts, int first, int count) {
        return new Readings(boot, millis, scan, contacts, false, first, Collections.nCopies(count, READING));
    }

    private static Identity identity(long boot, int speed, long interval, long timeout, int contacts, int channels) {
        return identity(boot, speed, interval, timeout, contacts, "S", "", Collections.nCopies(channels, CELL));
    }

    private static Identity identity(
            long boot,
            int speed,
            long interval,
            long timeout,
            int contacts,
            String serial,
            String firmware,
            List<ChannelIdentity> channels) {
        return new Identity(
                boot,
                ClockKind.CRYSTAL,
                false,
                false,
                false,
                speed,
                interval,
                timeout,
                SCALES,
                CONVERTER,
                contacts,
                serial,
                firmware,
                channels);
    }

    private static Identity named(String serial, String firmware) {
        return identity(1, 1, 1000, 0, 0, serial, firmware, List.of(CELL));
    }

    static Stream<Arguments> ranges() {
        return Stream.of(
                range("bootNumber", 0, U32, n -> readings(n, 0, 1, 0, 0, 1)),
                range("boardMillis", 0, U32, n -> readings(0, n, 1, 0, 0, 1)),
                range("scan", 1, U32, n -> readings(0, 0, n, 0, 0, 1)),
                range("contacts", 0, 255, n -> readings(0, 0, 1, (int) n, 0, 1)),
                range("firstChannel", 0, 63, n -> readings(0, 0, 1, 0, (int) n, 1)),
                range("firstChannel", 0, 32, n -> readings(0, 0, 1, 0, (int) n, 32)),
                range("readings", 1, 64, n -> readings(0, 0, 1, 0, 0, (int) Math.max(0, n))),
                range("state", 0, 127, n -> new Reading((int) n, 0, 0, 0)),
                range("bootNumber", 0, U32, n -> identity(n, 1, 1000, 0, 0, 1)),
                range("speed", 1, 65_535, n -> identity(0, (int) n, 1000, 0, 0, 1)),
                range("intervalMillis", 10, 60_000, n -> identity(0, 1, n, 0, 0, 1)),
                range("hostTimeoutMillis", 0, U32, n -> identity(0, 1, 1000, n, 0, 1)),
                range("contactInputs", 0, 8, n -> identity(0, 1, 1000, 0, (int) n, 1)),
                range("channels", 1, 64, n -> identity(0, 1, 1000, 0, 0, (int) Math.max(0, n))),
                range("serialNumber", 1, 32, n -> named("S".repeat((int) n), "")),
                range("loadMilliohms", 0, U32, n -> new ChannelIdentity(ChannelRole.BANK, Set.of(), n)),
                range("nanovoltsPerCount", 0, U32, n -> new Scales(n, 1, 1)),
                range("nanoamperesPerCount", 0, U32, n -> new Scales(1, n, 1)),
                range("microkelvinPerCount", 0, U32, n -> new Scales(1, 1, n)),
                range("offsetNanovolts", 0, U32, n -> new Converter(0, 1, n, 0, 0)),
                range("gainPartsPerMillion", 0, U32, n -> new Converter(0, 1, 0, n, 0)),
                range("celsiusMicrokelvin", 0, U32, n -> new Converter(0, 1, 0, 0, n)),
                range("requestSequence", 0, 65_535, n -> new LeadChecked((int) n, 0, LeadOutcome.OPEN, 0, 0)),
                range("channel", 0, 254, n -> new LeadChecked(0, (int) n, LeadOutcome.OPEN, 0, 0)),
                range("requestSequence", 0, 65_535, n -> new Done((int) n, 0x43)),
                range("requestKind", 0, 255, n -> new Done(0, (int) n)),
                range("requestSequence", 0, 65_535, n -> new Refused((int) n, 0x43, 0, RefusalReason.BUSY)),
                range("requestKind", 0, 255, n -> new Refused(0, (int) n, 0, RefusalReason.BUSY)),
                range("channel", -1, 254, n -> new Refused(0, 0x43, (int) n, RefusalReason.BUSY)),
                range("bootNumber", 0, U32, n -> new HostAlive(n, 0)),
                range("lastScan", 0, U32, n -> new HostAlive(0, n)),
                range("channel", 0, 254, n -> new SetLoad((int) n, true)),
                range("channel", 0, 254, n -> new CheckLead((int) n)),
                range("channel", 0, 254, n -> new Blink((int) n, 1)),
                range("seconds", 0, 255, n -> new Blink(0, (int) n)),
                range("seconds", 0, 255, n -> new Buzzer((int) n)),
                range("millis", 0, U32, SetInterval::new));
    }

    @ParameterizedTest(name = "{0} from {1} to {2}")
    @MethodSource("ranges")
    void a_component_is_taken_within_its_range_and_refused_by_name_beyond(
            String component, long lowest, long highest, LongFunction<Object> maker) {
        assertThatCode(() -> maker.apply(lowest)).doesNotThrowAnyException();
        assertThatCode(() -> maker.apply(highest)).doesNotThrowAnyException();
        assertThatThrownBy(() -> maker.apply(lowest - 1)).hasMessageContaining(component);
        assertThatThrownBy(() -> maker.apply(highest + 1)).hasMessageContaining(component);
    }

    @Test
    void a_serial_number_and_a_firmware_are_short_printable_ascii() {
        assertThat(named("EB 0042~", "").firmware()).isEmpty();
        assertThatThrownBy(() -> named("", "")).hasMessageContaining("serialNumber");
        assertThatThrownBy(() -> named("EB\n42", "")).hasMessageContaining("serialNumber");
        assertThatThrownBy(() -> named("EB", "1.0\u00e9")).hasMessageContaining("firmware");
        assertThatThrownBy(() -> named("EB", "1".repeat(33))).hasMessageContaining("firmware");
    }

    @Test
    void a_converter_has_a_range() {
        assertThatThrownBy(() -> new Converter(5, 5, 0, 0, 0)).hasMessageContaining("lowestCounts");
    }

    @Test
    void a_channel_that_measures_needs_its_scale() {
        assertThatThrownBy(() -> new Identity(
                        1,
                        ClockKind.NONE,
                        false,
                        false,
                        false,
                        1,
                        1000,
                        0,
                        new Scales(0, 1, 1),
                        CONVERTER,
                        0,
                        "S",
                        "",
                        List.of(CELL)))
                .hasMessageContaining("VOLTS");
    }

    @Test
    void amperes_come_only_with_a_scan_that_carries_them() {
        List<Reading> withAmperes = List.of(new Reading(1, 2, 3, 4));
        assertThatThrownBy(() -> new Readings(0, 0, 1, 0, false, 0, withAmperes))
                .hasMessageContaining("amperes");
        assertThat(new Readings(0, 0, 1, 0, true, 0, withAmperes).readings()).isEqualTo(withAmperes);
    }

    @Test
    void lists_and_sets_are_the_message_s_own() {
        List<Reading> mine = new ArrayList<>(List.of(READING));
        Readings scan = new Readings(0, 0, 1, 0, false, 0, mine);
        mine.clear();
        assertThat(scan.readings()).hasSize(1);
        Set<Ability> abilities = EnumSet.of(Ability.VOLTS);
        ChannelIdentity channel = new ChannelIdentity(ChannelRole.CELL, abilities, 0);
        abilities.add(Ability.BLINK);
        assertThat(channel.can(Ability.VOLTS)).isTrue();
        assertThat(channel.can(Ability.BLINK)).isFalse();
        assertThatThrownBy(() -> channel.abilities().add(Ability.BLINK)).isInstanceOf(RuntimeException.class);
    }

    @Test
    void an_interval_outside_what_a_board_may_grant_can_be_said_but_is_not_allowed() {
        assertThat(new SetInterval(10).isAllowed()).isTrue();
        assertThat(new SetInterval(60_000).isAllowed()).isTrue();
        assertThat(new SetInterval(9).isAllowed()).isFalse();
        assertThat(new SetInterval(60_001).isAllowed()).isFalse();
    }

    @Test
    void a_reading_answers_for_its_bits() {
        Reading reading = new Reading(Reading.VOLTS_VALID | Reading.LOAD_APPLIED, 1, 0, 0);
        assertThat(reading.is(Reading.VOLTS_VALID)).isTrue();
        assertThat(reading.is(Reading.VOLTS_VALID | Reading.LOAD_APPLIED)).isTrue();
        assertThat(reading.is(Reading.VOLTS_VALID | Reading.CELSIUS_VALID)).isFalse();
    }

    /** 29760 x 125000 nV = 3.72 V; 3720 x 100000 nA = 0.372 A; 2190 x 10000 uK = 21.90 degrees. */
    @Test
    void scales_turn_counts_into_units() {
        Scales scales = new Scales(125_000, 100_000, 10_000);
        assertThat(scales.volts(29_760)).isEqualTo(3.72);
        assertThat(scales.amperes(3_720)).isEqualTo(0.372);
        assertThat(scales.celsius(2_190)).isEqualTo(21.90);
        assertThat(scales.volts(-1_600)).isEqualTo(-0.2);
        assertThat(new Scales(U32, 1, 1).volts(Integer.MIN_VALUE)).isEqualTo(-(double) (U32 << 31) / 1e9);
    }

    @Test
    void kinds_and_codes_are_each_other_s_way_back() {
        for (Kind kind : Kind.values()) {
            assertThat(Kind.of(kind.code())).contains(kind);
        }
        assertThat(Kind.of(0)).isEmpty();
        assertThat(Kind.of(0x7F)).isEmpty();
        assertThat(Kind.of(0xFF)).isEmpty();
        assertThat(Kind.of(-1)).isEmpty();
    }
}
