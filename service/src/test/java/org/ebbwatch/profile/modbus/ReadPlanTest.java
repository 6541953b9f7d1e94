package org.ebbwatch.profile.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Source of the limits, 125 registers and 2000 bits: Modbus Application Protocol V1.1b3, 6.1 to 6.4. */
class ReadPlanTest {
    private static final int REGISTERS = 125;

    @Test
    void neighbours_are_read_by_one_request() {
        assertThat(ReadPlan.of(List.of(holding(4, 2), holding(0, 1), holding(1, 2), holding(3, 1)), 0, REGISTERS))
                .containsExactly(holding(0, 6));
    }

    @Test
    void a_gap_is_read_along_only_where_it_is_allowed() {
        List<Span> needed = List.of(holding(0, 2), holding(5, 1));
        assertThat(ReadPlan.of(needed, 2, REGISTERS)).containsExactly(holding(0, 2), holding(5, 1));
        assertThat(ReadPlan.of(needed, 3, REGISTERS)).containsExactly(holding(0, 6));
    }

    @Test
    void no_request_goes_beyond_what_one_may_read() {
        assertThat(ReadPlan.of(List.of(holding(0, 2), holding(123, 2)), 124, REGISTERS))
                .containsExactly(holding(0, 125));
        assertThat(ReadPlan.of(List.of(holding(0, 2), holding(124, 2)), 124, REGISTERS))
                .containsExactly(holding(0, 2), holding(124, 2));
        assertThat(ReadPlan.of(List.of(holding(0, 2), holding(2, 2), holding(4, 2)), 0, 4))
                .containsExactly(holding(0, 4), holding(4, 2));
    }

    @Test
    void units_and_tables_are_asked_apart() {
        Span coil = new Span(new Spot(1, Table.COILS, 0), 1);
        Span farCoil = new Span(new Spot(1, Table.COILS, 1_999), 1);
        Span input = new Span(new Spot(1, Table.INPUT_REGISTERS, 1), 1);
        Span other = new Span(new Spot(2, Table.HOLDING_REGISTERS, 1), 1);
        assertThat(ReadPlan.of(List.of(other, input, holding(0, 1), coil, farCoil), 1_998, REGISTERS))
                .containsExactly(new Span(coil.from(), 2_000), holding(0, 1), input, other);
    }

    @Property
    void everything_needed_is_read_within_the_limits(
            @ForAll("spans") List<Span> needed,
            @ForAll @IntRange(max = 10) int mostGap,
            @ForAll @IntRange(min = 2, max = 20) int mostRegisters) {
        List<Span> plan = ReadPlan.of(needed, mostGap, mostRegisters);
        for (Span span : needed) {
            assertThat(plan).anyMatch(block -> block.contains(span.from()) && block.end() >= span.end());
        }
        assertThat(plan).allMatch(block -> block.quantity() <= mostRegisters);
        assertThat(plan.size()).isLessThanOrEqualTo(fewest(needed, mostGap, mostRegisters));
    }

    /** Tries every place to begin a request, from the back: the fewest requests that read all from each span on. */
    private static int fewest(List<Span> needed, int mostGap, int mostRegisters) {
        List<Span> sorted = List.copyOf(new TreeSet<>(needed.stream()
                        .map(span -> 1_000 * span.from().address() + span.quantity())
                        .toList()))
                .stream()
                .map(code -> holding(code / 1_000, code % 1_000))
                .toList();
        int[] from = new int[sorted.size() + 1];
        for (int first = sorted.size() - 1; first >= 0; first--) {
            from[first] = Integer.MAX_VALUE;
            int end = sorted.get(first).end();
            for (int last = first; last < sorted.size(); last++) {
                Span next = sorted.get(last);
                if (next.from().address() - end > mostGap) {
                    break;
                }
                end = Math.max(end, next.end());
                if (end - sorted.get(first).from().address() > mostRegisters) {
                    break;
                }
                from[first] = Math.min(from[first], 1 + from[last + 1]);
            }
        }
        return from[0];
    }

    @Provide
    Arbitrary<List<Span>> spans() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, 60),
                        Arbitraries.integers().between(1, 2))
                .as(ReadPlanTest::holding)
                .list()
                .ofMinSize(1)
                .ofMaxSize(12);
    }

    private static Span holding(int address, int quantity) {
        return new Span(new Spot(1, Table.HOLDING_REGISTERS, address), quantity);
    }
}
