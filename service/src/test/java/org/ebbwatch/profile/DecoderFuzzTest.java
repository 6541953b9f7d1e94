package org.ebbwatch.profile;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.ebbwatch.profile.modbus.ModbusFuzz;
import org.ebbwatch.profile.modbus.ModbusProfile.Framing;
import org.ebbwatch.profile.text.TextFuzz;
import org.ebbwatch.rack.RackFileFaulty;

/** The short form of what docs/benchmarks/fuzz.md runs for a billion bytes. */
class DecoderFuzzTest {
    private static final long BYTES = 50_000;

    @Property(tries = 20)
    void frames_hold_no_reading_that_was_not_sent(@ForAll long seed) {
        judge(new BinaryFuzz(seed).run(BYTES));
    }

    @Property(tries = 20)
    void lines_hold_no_reading_that_was_not_sent(@ForAll long seed) throws RackFileFaulty {
        judge(new TextFuzz(seed).run(BYTES));
    }

    @Property(tries = 20)
    void answers_hold_no_reading_that_was_not_sent(@ForAll long seed, @ForAll Framing framing) {
        judge(new ModbusFuzz(framing, seed).run(BYTES));
    }

    private static void judge(FuzzCount count) {
        assertThat(count.wrongReadings()).as(count.firstWrong()).isZero();
        assertThat(count.readings())
                .as("of what was sent intact, hardly anything is lost")
                .isGreaterThan(count.sentIntact() / 2);
    }
}
