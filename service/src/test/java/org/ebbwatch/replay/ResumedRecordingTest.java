package org.ebbwatch.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Outcome.Raised;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * The bad contact of a real cell: at 341 s the load drops out and the channel reads 0.20 to 0.57 V at no load, later 4.06 V
 * (NASA Ames battery data set, Saha and Goebel 2007).
 */
class ResumedRecordingTest {
    private CellCard card;
    /** A service that stops and starts folds the journal again and goes on; nothing may hang on state outside the judge. */
    @Property(tries = 40)
    void a_recording_split_at_any_point_and_resumed_gives_the_same_verdict(
            @ForAll @DoubleRange(min = 0, max = 1) double share) throws Exception {
        List<Entry> journal = journal();
        int split = (int) (share * journal.size());
        List<Outcome> whole = fold(fresh(), journal);

        fold(fresh(), journal.subList(0, split));
        var resumed = fresh();
        List<Outcome> outcomes = fold(resumed, journal.subList(0, split));
        outcomes.addAll(fold(resumed, journal.subList(split, journal.size())));

        assertThat(outcomes).isEqualTo(whole);
        assertThat(leadOpens(outcomes)).isNotEmpty();
    }

    /**
     * Where the board is unheard for a moment, before any of its readings, the open lead is found all the same. Unheard at the
     * very moment at which the load goes off, nobody can tell an open lead from another cell: then it is held as that.
     */
    @Example
    void a_recording_interrupted_at_any_point_is_held_for_its_open_lead_all_the_same() throws Exception {
        int held = 0;
        List<Entry> whole = journal();
        for (int split = 0; split < whole.size(); split++) {
            List<Entry> journal = new ArrayList<>(whole);
            journal.add(split, new Entry.Gap(journal.get(split).eventMillis(), 0, 0));
            var judge = fresh();

            List<Finding> found = leadOpens(fold(judge, journal));

            boolean another = judge.reason().startsWith("another cell?");
            assertThat(judge.phase()).as("split %d", split).isEqualTo(Phase.HELD);
            assertThat(found.isEmpty())
                    .as("split %d: %s", split, judge.reason())
                    .isEqualTo(another);
            held += another ? 1 : 0;
        }
        assertThat(held).isEqualTo(2);
    }

    private static List<Outcome> fold(Judge judge, List<Entry> entries) {
        List<Outcome> outcomes = new ArrayList<>();
        entries.forEach(entry -> outcomes.add(judge.fold(entry)));
        return outcomes;
    }

    private static List<Finding> leadOpens(List<Outcome> outcomes) {
        return outcomes.stream()
                .flatMap(outcome -> outcome.events().stream())
                .filter(event -> event instanceof Raised)
                .map(event -> ((Raised) event).finding())
                .filter(finding -> finding.kind() == FindingKind.LEAD_OPEN)
                .toList();
    }

    private List<Entry> journal() throws Exception {
        String name = "nasa_B0050_d17_fault_reads_0V2_at_no_load_then_4V06.csv";
        Path file = Path.of(System.getProperty("recordings", "../../shared/data/cells"), name);
        assumeTrue(Files.exists(file), () -> "no recording " + file + "; name its folder with -Drecordings=FOLDER");
        Recording recording = Recording.parse(Files.readString(file));
        double ohms = Replay.suggestedOhms(recording);
        card = new CellCard("B0050", Chemistry.LAYERED_OXIDE, 2.0, ohms, false, false);
        return Replay.judge(recording, card, Procedure.careful()).journal();
    }

    private Judge fresh() {
        return new Judge(card, patient());
    }

    /** It was recorded every nine seconds or so. */
    private static Procedure patient() {
        Procedure careful = Procedure.careful();
        Procedure.Plausible its = careful.plausible();
        return new Procedure(
                careful.name(),
                careful.version(),
                careful.drain(),
                careful.rest(),
                careful.tieOff(),
                careful.heat(),
                new Procedure.Plausible(
                        its.lowestVolts(),
                        its.highestVolts(),
                        its.lowestCelsius(),
                        its.highestCelsius(),
                        its.cellCoolingMillis(),
                        its.pauseMillis(),
                        60_000));
    }
}
