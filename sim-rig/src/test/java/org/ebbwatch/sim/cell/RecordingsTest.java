package org.ebbwatch.sim.cell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Real cells, recorded under load and at rest, against the model given the same current. The model's numbers for each cell were
 * fitted to the rest; what is checked is that its shape can be had at all: how much has come back after a minute and after ten,
 * and how far the rest is off anywhere after half a minute.
 */
class RecordingsTest {
    private static final double LOADED_AMPERES = 0.3;

    private record Recording(double[] seconds, double[] volts, double[] amperes, int lastLoaded) {
        static Recording read(String file) throws IOException {
            String folder = System.getProperty("recordings", "");
            Path path = Path.of(folder, file);
            assumeTrue(
                    Files.isReadable(path),
                    "no recording " + file + " in the folder of the system property 'recordings'");
            List<String> rows = Files.readAllLines(path);
            int count = rows.size() - 1;
            double[] seconds = new double[count];
            double[] volts = new double[count];
            double[] amperes = new double[count];
            int last = 0;
            for (int i = 0; i < count; i++) {
                String[] fields = rows.get(i + 1).split(",", -1);
                seconds[i] = Double.parseDouble(fields[0]);
                volts[i] = Double.parseDouble(fields[1]);
                double flowing = fields[2].isEmpty() ? 0 : Double.parseDouble(fields[2]);
                amperes[i] = Math.abs(flowing) < LOADED_AMPERES ? 0 : flowing;
                if (amperes[i] > 0) {
                    last = i;
                }
            }
            return new Recording(seconds, volts, amperes, last);
        }

        double[] replayOn(CellSpec spec) {
            Cell cell = new Cell(spec, 1, 1, 21);
            double[] replayed = new double[volts.length];
            replayed[0] = cell.volts();
            for (int i = 1; i < volts.length; i++) {
                cell.setStep(seconds[i] - seconds[i - 1]);
                cell.begin();
                cell.finish(amperes[i]);
                replayed[i] = cell.volts();
            }
            return replayed;
        }

        /** How much of the rise to the end of the record has come so many seconds after the load. */
        double shareRisen(double[] of, double after) {
            int i = lastLoaded;
            while (seconds[i] - seconds[lastLoaded] < after) {
                i++;
            }
            return (of[i] - of[lastLoaded]) / (of[of.length - 1] - of[lastLoaded]);
        }

        double restError(double[] replayed, double after) {
            double sum = 0;
            int count = 0;
            for (int i = lastLoaded; i < volts.length; i++) {
                if (seconds[i] - seconds[lastLoaded] > after) {
                    sum += (replayed[i] - volts[i]) * (replayed[i] - volts[i]);
                    count++;
                }
            }
            return Math.sqrt(sum / count);
        }
    }

    private static double stateOfCharge(Chemistry chemistry, double volts) {
        double low = -0.03;
        double high = 1;
        while (high - low > 1e-9) {
            double middle = (low + high) / 2;
            if (chemistry.openCircuitVolts(middle) < volts) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static CellSpec spec(
            Chemistry chemistry, double ampereHours, double stateOfCharge, double ohms, Relaxation relaxation) {
        return CellSpec.build("recorded", chemistry, ampereHours)
                .health(1)
                .stateOfCharge(stateOfCharge)
                .ohms(ohms)
                .relaxation(relaxation)
                .done();
    }

    private static void assertRises(Recording recording, double[] replayed, double after, double tolerance) {
        assertThat(recording.shareRisen(replayed, after))
                .as("risen after %s s", after)
                .isCloseTo(recording.shareRisen(recording.volts(), after), within(tolerance));
    }

    /** Two time constants of the fit to the recording: 17 s, 1415 s. */
    @Test
    void an_over_discharged_18650_comes_back_as_recorded() throws IOException {
        Recording recording = Recording.read("nmc18650_overdischarge_to_1V03_rest.csv");
        double start = stateOfCharge(Chemistry.NMC, recording.volts()[0]);
        double[] replayed = recording.replayOn(
                spec(Chemistry.NMC, 3.883, start, 0.036, new Relaxation.Exponentials(0.0491, 17, 0.1108, 1415)));

        assertRises(recording, replayed, 60, 0.05);
        assertRises(recording, replayed, 600, 0.03);
        assertThat(recording.restError(replayed, 30)).isLessThan(0.025);
    }

    @Test
    void diffusion_brings_the_same_cell_back_in_a_like_shape() throws IOException {
        Recording recording = Recording.read("nmc18650_overdischarge_to_1V03_rest.csv");
        double start = stateOfCharge(Chemistry.NMC, recording.volts()[0]);
        double[] replayed = recording.replayOn(
                spec(Chemistry.NMC, 3.589, start, 0.036, new Relaxation.Diffusion(0.0293, 17, 3250)));

        assertRises(recording, replayed, 60, 0.05);
        assertRises(recording, replayed, 600, 0.12);
        assertThat(recording.restError(replayed, 30)).isLessThan(0.07);
    }

    /** Two time constants of the fit to the recording: 30 s, 1365 s. */
    @Test
    void an_iron_phosphate_cell_comes_back_as_recorded() throws IOException {
        Recording recording = Recording.read("lfp26650_discharge_to_2V37_rest.csv");
        double start = stateOfCharge(Chemistry.LFP, recording.volts()[0]);
        double[] replayed = recording.replayOn(
                spec(Chemistry.LFP, 1.318, start, 0.043, new Relaxation.Exponentials(0.0434, 30, 0.2138, 1365)));

        assertRises(recording, replayed, 60, 0.05);
        assertRises(recording, replayed, 600, 0.03);
        assertThat(recording.restError(replayed, 30)).isLessThan(0.01);
    }

    /** Two time constants of the fit to the recording: 62-71 s, 530-690 s. */
    @Test
    void a_pulsed_18650_comes_back_as_recorded() throws IOException {
        Recording recording = Recording.read("nasa_B0025_d00_li18650_pulse_to_1V92_rest_52min.csv");
        double[] replayed = recording.replayOn(
                spec(Chemistry.NMC, 2.132, 0.999, 0.11, new Relaxation.Exponentials(0.153, 66, 0.0797, 600)));

        assertRises(recording, replayed, 600, 0.03);
        assertThat(recording.restError(replayed, 30)).isLessThan(0.04);
    }
}
