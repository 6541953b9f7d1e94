package org.ebbwatch.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.ebbwatch.trace.codec.ValueKinds;
import org.junit.jupiter.api.Test;

/** Scans in the tail, whose numbers are near each other or as far as they can be. */
class TailScansTest {
    private static final BoardBoot BOOT = new BoardBoot("B", 1, ValueKinds.COUNTS, "{}");
    private static final int FIXED_BYTES = 8 + 1 + 4 + 8 + 8 + 2;

    @Property(tries = 200)
    void any_scan_comes_back_as_it_was(
            @ForAll @Size(min = 1, max = 9) int[] volts,
            @ForAll @IntRange(min = 0, max = 70_000) int spread,
            @ForAll boolean withAmperes)
            throws IOException {
        int[] celsius = Arrays.stream(volts)
                .map(number -> Math.floorMod(number, spread + 1))
                .toArray();
        int[] amperes = Arrays.stream(celsius).map(number -> number - spread).toArray();

        assertThat(roundTrip(row(volts, celsius, withAmperes ? amperes : null)))
                .containsExactly(told(row(volts, celsius, withAmperes ? amperes : null)));
    }

    @Test
    void near_numbers_take_two_bytes_and_far_ones_four() throws IOException {
        assertThat(bytes(row(new int[] {-1, 65_534}, new int[] {7, 7}, null)))
                .isEqualTo(FIXED_BYTES + 2 + 2 * (4 + 2 * 2));
        assertThat(bytes(row(new int[] {-1, 65_535, 0}, new int[] {7, 7, 7}, null)))
                .isEqualTo(FIXED_BYTES + 3 + 2 * 3 * 4);
        assertThat(bytes(row(new int[] {Integer.MIN_VALUE, Integer.MAX_VALUE, 0}, new int[] {7, 7, 7}, null)))
                .as("a difference that does not fit 32 bits")
                .isEqualTo(FIXED_BYTES + 3 + 2 * 3 * 4);
    }

    private static RowBuffer row(int[] volts, int[] celsius, int[] amperes) {
        var row = new RowBuffer();
        row.bootNumber = 1;
        row.scan = 5;
        row.eventMillis = 5_000;
        row.makeRoomFor(volts.length);
        row.volts = volts;
        row.celsius = celsius;
        row.withAmperes = amperes != null;
        row.amperes = amperes == null ? new int[volts.length] : amperes;
        Arrays.fill(row.states, (byte) 0xA3);
        return row;
    }

    private static long bytes(RowBuffer row) throws IOException {
        Path path = Files.createTempFile("scans", ".tail");
        try (TailFile tail = TailFile.begin(path)) {
            tail.scan(BOOT, row);
            long before = tail.length();
            tail.scan(BOOT, row);
            return tail.length() - before;
        } finally {
            Files.delete(path);
        }
    }

    private static List<String> roundTrip(RowBuffer row) throws IOException {
        Path path = Files.createTempFile("scans", ".tail");
        List<String> read = new ArrayList<>();
        try (TailFile tail = TailFile.begin(path)) {
            tail.scan(BOOT, row);
            tail.force();
            assertThat(TailReader.read(path, (boot, scan) -> read.add(told(scan)))
                            .damages())
                    .isEmpty();
        } finally {
            Files.delete(path);
        }
        return read;
    }

    private static String told(ScanRow row) {
        int channels = row.channels();
        return row.scan() + " " + row.eventMillis() + " "
                + Arrays.toString(Arrays.copyOf(row.states(), channels))
                + Arrays.toString(Arrays.copyOf(row.volts(), channels))
                + Arrays.toString(Arrays.copyOf(row.celsius(), channels))
                + (row.amperes() == null ? "" : Arrays.toString(Arrays.copyOf(row.amperes(), channels)));
    }
}
