package org.ebbwatch.profile.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import org.ebbwatch.profile.modbus.Answer.Data;
import org.ebbwatch.profile.modbus.Answer.Garbled;
import org.ebbwatch.profile.modbus.Answer.Refused;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Source of the requests and of the answer with three registers: the examples of Modbus over Serial Line V1.02 and of the
 * Application Protocol V1.1b3; their CRCs computed with the CRC-16/MODBUS of the published catalogue.
 */
class WireTest {
    private static final Request THREE_REGISTERS =
            Request.read(new Span(new Spot(17, Table.HOLDING_REGISTERS, 107), 3));
    private static final String THREE_ANSWERED = "11 03 06 AE 41 56 52 43 40 49 AD";

    @Nested
    class On_a_serial_line {
        private final RtuWire wire = new RtuWire();

        @ParameterizedTest
        @CsvSource({
            "1, HOLDING_REGISTERS, 0, 1, 01 03 00 00 00 01 84 0A",
            "1, HOLDING_REGISTERS, 0, 10, 01 03 00 00 00 0A C5 CD",
            "17, HOLDING_REGISTERS, 107, 3, 11 03 00 6B 00 03 76 87",
            "1, INPUT_REGISTERS, 0, 1, 01 04 00 00 00 01 31 CA"
        })
        void requests_are_those_of_the_standard(int unitId, Table table, int address, int quantity, String frame) {
            assertThat(wire.begin(Request.read(new Span(new Spot(unitId, table, address), quantity))))
                    .isEqualTo(bytes(frame));
        }

        /** The coil of the standard's example: address 172 on, 00 AC FF 00. */
        @Test
        void a_coil_is_written_and_its_echo_is_the_answer() {
            Request on = Request.write(new Spot(17, Table.COILS, 172), true);
            byte[] frame = wire.begin(on);
            assertThat(frame).startsWith(bytes("11 05 00 AC FF 00"));
            assertThat(wire.accept(frame, frame.length)).get().isInstanceOf(Data.class);
            Request off = Request.write(new Spot(17, Table.COILS, 172), false);
            wire.begin(off);
            assertThat(wire.accept(frame, frame.length)).get().isInstanceOf(Garbled.class);
        }

        @ParameterizedTest
        @ValueSource(ints = {1, 2, 3, 5, 11})
        void an_answer_may_come_in_portions(int portion) {
            wire.begin(THREE_REGISTERS);
            byte[] answer = bytes(THREE_ANSWERED);
            Optional<Answer> taken = Optional.empty();
            for (int from = 0; from < answer.length; from += portion) {
                assertThat(taken).isEmpty();
                byte[] part = Arrays.copyOfRange(answer, from, Math.min(answer.length, from + portion));
                taken = wire.accept(part, part.length);
            }
            assertThat(((Data) taken.orElseThrow()).data()).isEqualTo(bytes("AE 41 56 52 43 40"));
        }

        @Test
        void every_damaged_bit_is_noticed() {
            for (int bit = 0; bit < 8 * 11; bit++) {
                byte[] answer = bytes(THREE_ANSWERED);
                answer[bit / 8] ^= (byte) (1 << (bit % 8));
                wire.begin(THREE_REGISTERS);
                assertThat(wire.accept(answer, answer.length).filter(Data.class::isInstance))
                        .as("bit %d", bit)
                        .isEmpty();
            }
        }

        /** 11 83 02 and its CRC C1 34 (computed). */
        @Test
        void an_exception_is_told_with_its_code() {
            wire.begin(THREE_REGISTERS);
            byte[] answer = bytes("11 83 02 C1 34");
            assertThat(wire.accept(answer, answer.length)).contains(new Refused(2));
            assertThat(new Refused(2)).hasToString("refused with exception 2 (illegal data address)");
            assertThat(new Refused(200))
                    .hasToString("refused with exception 200 (a code that the standard does not name)");
        }

        @Test
        void what_is_left_of_the_last_answer_is_not_taken_for_the_next() {
            wire.begin(THREE_REGISTERS);
            byte[] answer = bytes(THREE_ANSWERED);
            wire.accept(answer, 6);
            wire.begin(Request.read(new Span(new Spot(18, Table.HOLDING_REGISTERS, 107), 3)));
            assertThat(wire.accept(answer, answer.length)).contains(new Garbled("an answer of unit 17"));
        }

        @Test
        void the_pause_between_frames_is_three_and_a_half_characters_but_no_less_than_the_standard_says() {
            assertThat(RtuWire.pauseNanos(9_600)).isEqualTo(4_010_416);
            assertThat(RtuWire.pauseNanos(115_200)).isEqualTo(1_750_000);
        }
    }

    @Nested
    class Over_TCP {
        private final TcpWire wire = new TcpWire();

        @Test
        void a_request_carries_a_transaction_number_that_goes_on() {
            assertThat(wire.begin(THREE_REGISTERS)).isEqualTo(bytes("00 01 00 00 00 06 11 03 00 6B 00 03"));
            assertThat(wire.begin(THREE_REGISTERS)).isEqualTo(bytes("00 02 00 00 00 06 11 03 00 6B 00 03"));
        }

        @Test
        void a_late_answer_to_the_request_before_is_passed_over() {
            wire.begin(THREE_REGISTERS);
            wire.begin(THREE_REGISTERS);
            byte[] late = bytes("00 01 00 00 00 09 11 03 06 00 00 00 00 00 00");
            assertThat(wire.accept(late, late.length)).isEmpty();
            byte[] answer = bytes("00 02 00 00 00 09 11 03 06 AE 41 56 52 43 40");
            assertThat(wire.accept(answer, 9)).isEmpty();
            Optional<Answer> taken = wire.accept(Arrays.copyOfRange(answer, 9, answer.length), 6);
            assertThat(((Data) taken.orElseThrow()).data()).isEqualTo(bytes("AE 41 56 52 43 40"));
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "00 01 00 01 00 09 11 03 06 AE 41 56 52 43 40",
                    "00 01 00 00 00 01 11 03 06 AE 41 56 52 43 40",
                    "00 01 00 00 01 00 11 03 06 AE 41 56 52 43 40",
                    "48 54 54 50 2F 31 2E 31 20"
                })
        void a_header_that_is_none_ends_it(String hex) {
            wire.begin(THREE_REGISTERS);
            byte[] bytes = bytes(hex);
            assertThat(wire.accept(bytes, bytes.length)).contains(new Garbled(Exchange.NO_MODBUS));
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "00 01 00 00 00 09 12 03 06 AE 41 56 52 43 40",
                    "00 01 00 00 00 09 11 04 06 AE 41 56 52 43 40",
                    "00 01 00 00 00 07 11 03 04 AE 41 56 52",
                    "00 01 00 00 00 09 11 03 04 AE 41 56 52 43 40"
                })
        void another_unit_function_or_length_is_no_answer(String hex) {
            wire.begin(THREE_REGISTERS);
            byte[] bytes = bytes(hex);
            assertThat(wire.accept(bytes, bytes.length)).get().isInstanceOf(Garbled.class);
        }
    }

    private static byte[] bytes(String hex) {
        return HexFormat.ofDelimiter(" ").parseHex(hex);
    }
}
