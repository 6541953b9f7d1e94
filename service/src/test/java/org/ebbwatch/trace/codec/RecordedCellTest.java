package org.ebbwatch.trace.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recordings of real cells, as counts of 0.1 mV and 1 mK and as the floats themselves. */
class RecordedCellTest {

    @ParameterizedTest
    @CsvSource({
        // file, column of degrees, most bytes per pair of counts (measured, rounded up)
        "short_pouch_100soc.csv, 3, 1.4",
        "nmc18650_overdischarge_to_1V03_rest.csv, 3, 2.2",
        "lfp26650_discharge_to_2V37_rest.csv, 3, 1.9",
    })
    void a_recorded_cell_comes_back_bit_for_bit_and_small(String file, int celsiusColumn, double mostBytesPerPair)
            throws IOException {
        Path recording = Path.of(System.getProperty("recordings", "absent"), file);
        assumeTrue(Files.exists(recording), "no recordings of real cells here: " + recording);
        List<String[]> rows = rows(recording);

        long bytes = roundTrip(
                rows,
                ValueKinds.COUNTS_WITHOUT_AMPERES,
                row -> (int) Math.round(Double.parseDouble(row[1]) * 10_000),
                row -> (int) Math.round(Double.parseDouble(row[celsiusColumn]) * 1_000));
        roundTrip(
                rows,
                new ValueKinds(ValueKind.FLOAT32, ValueKind.FLOAT32, ValueKind.ABSENT),
                row -> Float.floatToRawIntBits(Float.parseFloat(row[1])),
                row -> Float.floatToRawIntBits(Float.parseFloat(row[celsiusColumn])));

        assertThat((double) bytes / rows.size()).isLessThan(mostBytesPerPair);
    }

    private static List<String[]> rows(Path recording) throws IOException {
        List<String[]> rows = new ArrayList<>();
        for (String line : Files.readAllLines(recording)) {
            String[] row = line.split(",", -1);
            if (!row[0].equals("t_s") && !row[1].isEmpty() && !row[3].isEmpty()) {
                rows.add(row);
            }
        }
        return rows;
    }

    private static long roundTrip(
            List<String[]> rows, ValueKinds kinds, ToIntFunction<String[]> volts, ToIntFunction<String[]> celsius) {
        long bytes = 0;
        for (int from = 0; from < rows.size(); from += Samples.MOST) {
            int count = Math.min(Samples.MOST, rows.size() - from);
            Samples samples = Samples.unfilled(kinds, count);
            for (int i = 0; i < count; i++) {
                String[] row = rows.get(from + i);
                samples.scans()[i] = (long) from + i;
                samples.eventMillis()[i] = Math.round(Double.parseDouble(row[0]) * 1000);
                samples.volts()[i] = volts.applyAsInt(row);
                samples.celsius()[i] = celsius.applyAsInt(row);
            }
            SegmentKey key = new SegmentKey("RECORDED", 0, 0, from, samples.eventMillis()[0]);
            byte[] encoded = SegmentCodec.encode(key, Sha256.NONE, Sha256.NONE, samples);
            Samples back = SegmentCodec.decode(encoded).samples();
            assertThat(back.eventMillis()).isEqualTo(samples.eventMillis());
            assertThat(back.volts()).isEqualTo(samples.volts());
            assertThat(back.celsius()).isEqualTo(samples.celsius());
            bytes += encoded.length;
        }
        return bytes;
    }
}
