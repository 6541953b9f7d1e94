package org.ebbwatch.profile.modbus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.time.Duration;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.profile.file.ProfileFile;
import org.ebbwatch.rack.RackFileFaulty;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.OpenAllLoads;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetLoad;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Against servers that are not ours: libmodbus in a process of its own, and the Modbus library's, over TCP and over RTU. */
class ModbusServersTest {
    private static final int BAUD = 19_200;

    @TempDir
    Path folder;

    @Nested
    class A_unit_made_with_libmodbus {
        @ParameterizedTest
        @EnumSource(ModbusProfile.Framing.class)
        void gives_every_type_of_number_in_either_order_of_its_words(ModbusProfile.Framing framing) throws Exception {
            String channels =
                    """
                    channels:
                      - role: cell
                        load: {unitId: 5, coil: 3, sense: {unitId: 5, discrete: 3}}
                        volts: {unitId: 5, holding: 0, type: int16, unit: mV}
                        celsius: {unitId: 5, holding: 4, type: float32, sensor: {type: degrees, uncertainty: 1}}
                      - role: cell
                        volts: {unitId: 5, holding: 1, type: uint16, unit: mV}
                        celsius: {unitId: 5, holding: 6, type: float32, wordOrder: lowFirst, sensor: {type: degrees, uncertainty: 1}}
                      - role: cell
                        volts: {unitId: 5, holding: 2, type: int32, unit: uV}
                        celsius: {unitId: 5, holding: 8, type: int16, open: 32767, sensor: {type: degrees, uncertainty: 1}}
                      - role: cell
                        celsius: {unitId: 5, holding: 6, type: float32, sensor: {type: degrees, uncertainty: 1}}
                    """;
            with(framing, channels, host -> {
                assertThat(host.identity().hostTimeoutMillis()).isZero();
                host.nextScan();
                assertThat(host.volts(0)).isCloseTo(-0.020, within(1e-9));
                assertThat(host.volts(1)).isCloseTo(65.0, within(1e-9));
                assertThat(host.volts(2)).isCloseTo(3.712345, within(1e-9));
                assertThat(host.celsius(0)).isCloseTo(25.25, within(1e-9));
                assertThat(host.celsius(1)).isCloseTo(25.25, within(1e-9));
                assertThat(host.celsius(2)).as("an open sensor").isNaN();
                assertThat(host.is(2, Reading.SENSOR_OPEN)).isTrue();
                assertThat(host.celsius(3))
                        .as("25.25 read with its words the wrong way")
                        .isNaN();

                assertThat(host.ask(new SetLoad(0, true))).isInstanceOf(Done.class);
                assertThat(host.nextScan().is(0, Reading.LOAD_APPLIED)).isTrue();
                assertThat(host.ask(new OpenAllLoads())).isInstanceOf(Done.class);
                assertThat(host.nextScan().is(0, Reading.LOAD_APPLIED)).isFalse();
            });
        }

        @ParameterizedTest
        @EnumSource(ModbusProfile.Framing.class)
        void that_answers_with_an_exception_has_a_fault_on_that_channel_only(ModbusProfile.Framing framing)
                throws Exception {
            with(framing, twoChannels(100), host -> {
                host.until(() -> !host.remark().isEmpty());
                assertThat(host.remark())
                        .isEqualTo(
                                "Reading holding 100 of unit 5 was refused with exception 2 (illegal data address).");
                assertOnlyTheFirstIsRead(host);
            });
        }

        @ParameterizedTest
        @EnumSource(ModbusProfile.Framing.class)
        void whose_answer_comes_from_another_unit_is_not_believed(ModbusProfile.Framing framing) throws Exception {
            with(framing, twoChannels(800), host -> {
                host.until(() -> !host.remark().isEmpty());
                assertThat(host.remark()).contains("holding 800 of unit 5").contains("an answer of unit 6");
                assertOnlyTheFirstIsRead(host);
            });
        }

        @ParameterizedTest
        @EnumSource(ModbusProfile.Framing.class)
        void that_does_not_answer_in_time_has_a_fault_on_that_channel_only(ModbusProfile.Framing framing)
                throws Exception {
            with(framing, twoChannels(900), host -> {
                host.until(() -> !host.remark().isEmpty());
                assertThat(host.remark()).isEqualTo("Reading holding 900 of unit 5 was not answered in time.");
                assertOnlyTheFirstIsRead(host);
            });
        }

        private void assertOnlyTheFirstIsRead(HostSide host) throws IOException {
            host.nextScan();
            assertThat(host.volts(0)).isCloseTo(-0.020, within(1e-9));
            assertThat(host.volts(1)).isNaN();
            assertThat(host.badFrames()).isPositive();
        }

        private String twoChannels(int secondRegister) {
            return """
                    channels:
                      - role: cell
                        volts: {unitId: 5, holding: 0, type: int16, unit: mV}
                      - role: cell
                        volts: {unitId: 5, holding: %d, type: int16, unit: mV}
                    """
                    .formatted(secondRegister);
        }

        private void with(ModbusProfile.Framing framing, String channels, Check check) throws Exception {
            if (framing == ModbusProfile.Framing.TCP) {
                int port = freePort();
                try (LibmodbusUnit unit = LibmodbusUnit.onNetwork(folder, port, 5);
                        HostSide host = host("modbusTcp", channels, new PortAddress.Tcp("127.0.0.1", port))) {
                    check.at(host);
                    assertThat(unit.isRunning()).isTrue();
                }
                return;
            }
            try (TwistedPair line = new TwistedPair();
                    LibmodbusUnit unit = LibmodbusUnit.onLine(folder, line.deviceEnd(), 5);
                    HostSide host = host("modbusRtu", channels, new PortAddress.Serial(line.hostEnd(), BAUD))) {
                check.at(host);
                assertThat(unit.isRunning()).isTrue();
            }
        }
    }

    @Nested
    class Units_of_the_library_on_one_line {
        private static final String TWO_UNITS =
                """
                channels:
                  - role: cell
                    load: {unitId: 1, coil: 16, sense: {unitId: 1, discrete: 32}}
                    volts: {unitId: 1, holding: 0, type: int16, unit: mV}
                  - role: cell
                    volts: {unitId: 2, holding: 0, type: int16, unit: mV}
                """;

        @Test
        void fail_singly_and_come_back() throws Exception {
            try (TwistedPair line = new TwistedPair();
                    Modules modules = filled(Modules.onLine(line.deviceEnd(), BAUD));
                    HostSide host = host("modbusRtu", TWO_UNITS, new PortAddress.Serial(line.hostEnd(), BAUD))) {
                host.identity();
                host.nextScan();
                assertThat(host.volts(0)).isCloseTo(3.7, within(1e-9));
                assertThat(host.volts(1)).isCloseTo(3.6, within(1e-9));

                modules.unplugged(1, true);
                host.until(() -> host.remark().contains("of unit 1 was not answered in time"));
                host.nextScan();
                assertThat(host.volts(0)).isNaN();
                assertThat(host.volts(1)).isCloseTo(3.6, within(1e-9));

                modules.unplugged(1, false);
                host.until(() -> host.remark().isEmpty());
                assertThat(host.nextScan().volts(0)).isCloseTo(3.7, within(1e-9));
            }
        }

        /** Over TCP: on a serial line version 2.1.0 of the library's server sends exceptions with a wrong checksum (tried). */
        @Test
        void say_why_they_refuse() throws Exception {
            try (Modules modules = filled(Modules.onNetwork());
                    HostSide host = host(
                            "modbusTcp",
                            TWO_UNITS,
                            PortAddress.parse(modules.address(), BAUD).orElseThrow())) {
                host.identity();
                modules.refuses(2, true);
                host.until(() -> host.remark().contains("of unit 2 was refused with exception 4"));
                host.nextScan();
                assertThat(host.volts(0)).isCloseTo(3.7, within(1e-9));
                assertThat(host.volts(1)).isNaN();

                modules.refuses(2, false);
                host.until(() -> host.remark().isEmpty());
                assertThat(host.nextScan().volts(1)).isCloseTo(3.6, within(1e-9));
            }
        }

        @Test
        void are_believed_to_have_switched_a_load_only_when_its_sense_shows_it() throws Exception {
            try (Modules modules = filled(Modules.onNetwork())) {
                modules.senses(16, 32);
                PortAddress address = PortAddress.parse(modules.address(), BAUD).orElseThrow();
                try (HostSide host = host("modbusTcp", TWO_UNITS, address)) {
                    host.identity();
                    assertThat(host.ask(new SetLoad(0, true))).isInstanceOf(Done.class);
                    assertThat(host.nextScan().is(0, Reading.LOAD_APPLIED)).isTrue();

                    modules.sticks(16);
                    assertThat(host.ask(new SetLoad(0, false)))
                            .isInstanceOfSatisfying(
                                    Refused.class, it -> assertThat(it.reason()).isEqualTo(RefusalReason.FAILED));
                    assertThat(host.nextScan().is(0, Reading.LOAD_APPLIED))
                            .as("what the contact does, not what was asked")
                            .isTrue();

                    modules.senses(16, 32);
                    assertThat(host.ask(new SetLoad(0, true))).isInstanceOf(Done.class);
                    assertThat(host.ask(new SetLoad(1, true)))
                            .isInstanceOfSatisfying(Refused.class, it -> assertThat(it.reason())
                                    .isEqualTo(RefusalReason.NO_SUCH_ABILITY));
                    assertThat(modules.coil(1, 16)).isTrue();
                }
                assertThat(modules.coil(1, 16)).as("once the port is closed").isFalse();
            }
        }

        @Test
        void have_their_loads_opened_when_the_service_is_stuck() throws Exception {
            try (Modules modules = filled(Modules.onNetwork());
                    HostSide host = host(
                            "modbusTcp",
                            TWO_UNITS.replace(", sense: {unitId: 1, discrete: 32}", ""),
                            PortAddress.parse(modules.address(), BAUD).orElseThrow())) {
                host.identity();
                assertThat(host.ask(new SetLoad(0, true))).isInstanceOf(Done.class);
                assertThat(modules.coil(1, 16)).isTrue();
                await().atMost(Duration.ofSeconds(30)).until(() -> !modules.coil(1, 16));
                assertThat(host.nextScan().is(0, Reading.LOAD_APPLIED)).isFalse();
            }
        }

        private Modules filled(Modules modules) {
            modules.holding(1, 0, 3_700);
            modules.holding(2, 0, 3_600);
            return modules;
        }
    }

    private static HostSide host(String protocol, String channels, PortAddress address)
            throws RackFileFaulty, IOException {
        String profile =
                """
                protocol: %s
                intervalMillis: 100
                timeoutMillis: 100
                converter: {lowestVolts: -1, highestVolts: 70, offsetMillivolts: 1, gainPercent: 0.1}
                """
                        .formatted(protocol);
        return new HostSide(ProfileFile.parse(profile + channels, "profile.yml")
                .ports(address, "TEST-1")
                .get());
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private interface Check {
        void at(HostSide host) throws Exception;
    }
}
