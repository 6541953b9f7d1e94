package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.calibration.CalibrationPoint;
import org.ebbwatch.calibration.Correction;
import org.ebbwatch.calibration.Meter;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.trace.BoardBoot;
import org.junit.jupiter.api.Test;

class BasisTextTest {
    private static final Identity SAID = PlainBoard.identity(64, 1_000);

    static Calibration calibration(int channel, boolean applied) {
        return new Calibration(
                "0193f0a0-0000-7000-8000-0000000000" + (10 + channel),
                SAID.serialNumber(),
                channel,
                1_750_000_000_000L,
                "Anna \"the first\"\nÅ",
                new Meter("bench meter", 0.005, 0.002),
                CalibrationPoint.shorted(0.0123456789, 1e-4),
                new CalibrationPoint(0.5, 0.5123, 1e-4),
                new CalibrationPoint(4, 1.0 / 3 + 3.7, 1e-4),
                new Correction(-0.0123, 1.0 / 0.99, 0.0012, 0.0058, 0, 0, 0.5),
                1e-5,
                applied);
    }

    @Test
    void the_boards_word_alone_is_its_identity_and_nothing_more() {
        assertThat(BasisText.write(BoardBasis.of(SAID))).isEqualTo(IdentityText.write(SAID));
        assertThat(BasisText.read(IdentityText.write(SAID))).isEqualTo(BoardBasis.of(SAID));
    }

    @Test
    void wiring_and_calibrations_come_back_bit_for_bit() {
        var wiring = new Wiring(
                Map.of(60, ChannelRole.AMBIENT, 61, ChannelRole.DUMMY, 62, ChannelRole.WATCH),
                Map.of(3, 63),
                Map.of(3, 0.1 / 3));
        var basis = new BoardBasis(SAID, wiring, List.of(calibration(5, false), calibration(3, true)));
        assertThat(BasisText.read(BasisText.write(basis))).isEqualTo(basis);
        assertThat(basis.corrections()).containsOnlyKeys(3);
    }

    @Test
    void a_board_of_sixty_four_calibrated_channels_is_within_what_the_trace_keeps() {
        List<Calibration> all = java.util.stream.IntStream.range(0, 64)
                .mapToObj(channel -> calibration(channel, true))
                .toList();
        String text = BasisText.write(new BoardBasis(SAID, Wiring.NONE, all));
        assertThat(text.length()).isLessThan(BoardBoot.MOST_BYTES);
    }

    @Test
    void what_is_no_such_text_is_refused() {
        assertThatThrownBy(() -> BasisText.read(IdentityText.write(SAID) + "\nfuture 1 2"))
                .hasMessageContaining("future");
    }

    @Test
    void a_role_of_a_channel_that_the_board_has_not_is_passed_over() {
        var wiring = new Wiring(Map.of(0, ChannelRole.AMBIENT, 70, ChannelRole.DUMMY), Map.of(), Map.of());
        Identity wired = new BoardBasis(SAID, wiring, List.of()).identity();
        assertThat(wired.channels()).hasSize(64);
        assertThat(wired.channels().get(0).role()).isEqualTo(ChannelRole.AMBIENT);
        assertThat(wired.channels().get(1)).isEqualTo(SAID.channels().get(1));
    }
}
