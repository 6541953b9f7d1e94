package org.ebbwatch.sim.rack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.SetLoad;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Each fault of a channel's sensors: what is true, and what the readings make of it. */
class SensorFaultsTest {
    private static final Trigger SOON = Trigger.at(30_000);
    private static final int AMBIENT = 1;

    @Nested
    class A_thermistor {
        @Test
        void that_falls_off_reads_the_air_within_a_minute() {
            TestRack rack = TestRack.with(
                    Fault.on(0, FaultKind.WARMING, Trigger.at(0)).with(Map.of("watts", 0.6, "riseMinutes", 1.0)),
                    Fault.on(0, FaultKind.THERMISTOR_OFF, Trigger.at(3_600_000)));
            rack.run(3_590);
            double warm = rack.host.celsius(0);
            rack.run(70);

            assertThat(warm).isGreaterThan(28);
            assertThat(rack.host.celsius(0)).isCloseTo(21, within(0.8));
            assertThat(rack.board.truth(0).celsius()).isGreaterThan(28);
            assertThat(rack.host.reading(0).is(Reading.CELSIUS_VALID)).isTrue();
        }

        @Test
        void that_fell_off_does_not_rise_when_held() {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.THERMISTOR_OFF, SOON));
            rack.run(60);
            double before = rack.host.celsius(0);
            rack.board.hold(0, 30);
            rack.run(30);

            assertThat(rack.host.celsius(0)).isCloseTo(before, within(0.3));
        }

        @Test
        void that_opens_is_flagged_by_a_board_that_looks() {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.THERMISTOR_OPEN, SOON));
            rack.run(31);

            assertThat(rack.host.reading(0).is(Reading.SENSOR_OPEN)).isTrue();
            assertThat(rack.host.reading(0).is(Reading.CELSIUS_VALID)).isFalse();
            assertThat(rack.host.reading(0).celsius()).isZero();
        }

        @Test
        void that_opens_looks_very_cold_on_a_board_that_does_not() {
            TestRack rack =
                    TestRack.with(Fault.on(0, FaultKind.THERMISTOR_OPEN, SOON).with(Map.of("flagged", 0.0)));
            rack.run(31);

            assertThat(rack.host.celsius(0)).isEqualTo(-55);
            assertThat(rack.host.reading(0).is(Reading.CELSIUS_VALID | Reading.CELSIUS_AT_RAIL))
                    .isTrue();
        }

        @Test
        void can_freeze_and_thaw() {
            TestRack rack = TestRack.with(
                    Fault.on(0, FaultKind.FROZEN_CELSIUS, SOON).lasting(600_000),
                    Fault.on(0, FaultKind.WARMING, SOON).with(Map.of("watts", 2.0)));
            rack.run(30);
            int frozen = rack.host.reading(0).celsius();
            for (int i = 0; i < 599; i++) {
                rack.run(1);
                assertThat(rack.host.reading(0).celsius()).isEqualTo(frozen);
            }
            rack.run(60);
            assertThat(rack.host.reading(0).celsius()).isGreaterThan(frozen + 50);
        }

        @Test
        void can_say_something_absurd_that_is_finite() {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.ABSURD_CELSIUS, SOON));
            rack.run(31);
            assertThat(rack.host.reading(0).celsius()).isEqualTo(Integer.MAX_VALUE);
            assertThat(rack.host.reading(0).is(Reading.CELSIUS_VALID)).isTrue();

            TestRack reset =
                    TestRack.with(Fault.on(0, FaultKind.ABSURD_CELSIUS, SOON).with(Map.of("celsius", 85.0)));
            reset.run(31);
            assertThat(reset.host.celsius(0)).isEqualTo(85);
        }

        @Test
        void of_the_room_can_fail_too() {
            TestRack rack = TestRack.with(Fault.on(AMBIENT, FaultKind.THERMISTOR_OPEN, SOON));
            rack.run(31);

            assertThat(rack.host.reading(AMBIENT).is(Reading.SENSOR_OPEN)).isTrue();
            assertThat(rack.suffers(AMBIENT, FaultKind.THERMISTOR_OPEN)).isTrue();
        }
    }

    @Nested
    class A_voltage_reading {
        @Test
        void can_freeze() {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.FROZEN_VOLTS, SOON));
            rack.host.tell(rack.board, new SetLoad(0, true));
            rack.run(30);
            int frozen = rack.host.reading(0).volts();
            rack.run(1_200);

            assertThat(rack.host.reading(0).volts()).isEqualTo(frozen);
            assertThat(rack.board.truth(0).leadVolts()).isLessThan(rack.host.volts(0) - 0.005);
        }

        @Test
        void can_be_absurd() {
            TestRack rack = TestRack.with(Fault.on(0, FaultKind.ABSURD_VOLTS, SOON));
            rack.run(31);

            assertThat(rack.host.reading(0).volts()).isEqualTo(Integer.MAX_VALUE);
            assertThat(rack.host.reading(0).is(Reading.VOLTS_VALID)).isTrue();
        }
    }
}
