package org.ebbwatch.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.ebbwatch.sizing.Network.Carried;
import org.ebbwatch.sizing.Stock.Drawer;
import org.ebbwatch.sizing.Stock.Drawer.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Loads of several resistors. */
class NetworkTest {
    private static Network ohms(double ohms) {
        return new Network.Single(new Resistor(ohms, 5, ResistorBuild.CEMENT));
    }

    private static List<Network> drawer(String list) {
        return Drawer.of(list, ResistorBuild.CEMENT).candidates(1e-6, true);
    }

    private static Set<Double> values(String list) {
        return drawer(list).stream()
                .map(network -> Math.round(network.ohms() * 1e6) / 1e6)
                .collect(Collectors.toSet());
    }

    @Test
    void ten_ohms_after_twenty_two_and_fifteen_side_by_side_share_volts_and_watts() {
        Network network = Network.inSeries(ohms(10), Network.inParallel(ohms(22), ohms(15)));

        // 22 * 15 / 37 = 8.919; together 18.919; at 4.2 V 0.2220 A; 10 ohm: 0.4928 W; 1.980 V across the pair:
        // 22 ohm 0.1782 W, 15 ohm 0.2614 W; together 4.2 * 0.2220 = 0.9324 W
        assertThat(network.ohms()).isCloseTo(18.919, within(0.001));
        assertThat(network.carried(4.2))
                .extracting(Carried::watts)
                .usingComparatorForType((a, b) -> Math.abs(a - b) < 2e-4 ? 0 : 1, Double.class)
                .containsExactly(0.4928, 0.1782, 0.2614);
        assertThat(network.words()).isEqualTo("10 ohm 5 W in series with (22 ohm 5 W in parallel with 15 ohm 5 W)");
    }

    @Property
    void the_pieces_carry_what_the_whole_takes(
            @ForAll @DoubleRange(min = 0.1, max = 1e3) double a,
            @ForAll @DoubleRange(min = 0.1, max = 1e3) double b,
            @ForAll @DoubleRange(min = 0.1, max = 1e3) double c,
            @ForAll @DoubleRange(min = 0.1, max = 1e3) double d,
            @ForAll @IntRange(min = 0, max = 4) int shape,
            @ForAll @DoubleRange(min = 0.1, max = 50) double volts) {
        Network network =
                switch (shape) {
                    case 0 ->
                        Network.inSeries(Network.inParallel(ohms(a), ohms(b)), Network.inParallel(ohms(c), ohms(d)));
                    case 1 ->
                        Network.inParallel(Network.inSeries(ohms(a), ohms(b)), Network.inSeries(ohms(c), ohms(d)));
                    case 2 ->
                        Network.inParallel(ohms(a), Network.inSeries(ohms(b), Network.inParallel(ohms(c), ohms(d))));
                    case 3 -> Network.inSeries(ohms(a), Network.inSeries(ohms(b), Network.inSeries(ohms(c), ohms(d))));
                    default ->
                        Network.inParallel(ohms(a), Network.inParallel(ohms(b), Network.inParallel(ohms(c), ohms(d))));
                };
        double whole = volts * volts / network.ohms();

        assertThat(network.carried(volts).stream().mapToDouble(Carried::watts).sum())
                .isCloseTo(whole, within(1e-9 * whole));
        assertThat(network.pieces()).isEqualTo(4);
    }

    /** Counted by hand: one; two in a row or side by side; and so on for three alike, 1/3 to 3. */
    @Test
    void three_alike_make_seven_different_loads() {
        assertThat(values("6:5:3")).containsExactlyInAnyOrder(6.0, 12.0, 3.0, 18.0, 2.0, 9.0, 4.0);
    }

    /** Known count of two-terminal series-parallel values of n equal resistors: 1, 2, 4, 9 (sequence A048211 of the OEIS, from memory). */
    @Test
    void four_alike_make_nine_loads_of_exactly_four() {
        assertThat(drawer("60:5:4").stream()
                        .filter(network -> network.pieces() == 4)
                        .map(network -> Math.round(network.ohms() * 1e6))
                        .collect(Collectors.toSet()))
                .hasSize(9);
    }

    @Test
    void no_more_is_taken_than_lies_in_the_drawer() {
        assertThat(values("10:5,22:5")).containsExactlyInAnyOrder(10.0, 22.0, 32.0, 6.875);
        assertThat(drawer("10:5:9")).allMatch(network -> network.pieces() <= Network.MOST_PIECES);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "22",
                "22:",
                "22:10;3",
                "22:10:0",
                "abc",
                "22:10,",
                "1e3:5",
                "-22:5",
                "22:0",
                "0:5",
                "22:10:4:1"
            })
    void a_drawer_that_cannot_be_read_is_refused_with_how_it_is_written(String list) {
        assertThatThrownBy(() -> Drawer.of(list, ResistorBuild.CEMENT))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("takes");
    }

    @Test
    void a_drawer_is_read() {
        assertThat(Drawer.of("22:10, 4.7:5:4", ResistorBuild.FILM).kinds())
                .containsExactly(
                        new Kind(new Resistor(22, 10, ResistorBuild.FILM), 1),
                        new Kind(new Resistor(4.7, 5, ResistorBuild.FILM), 4));
        assertThatThrownBy(() -> Drawer.of("1:1,".repeat(12) + "1:1", ResistorBuild.FILM))
                .hasMessageContaining("1 to 12");
    }
}
