package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import org.ebbwatch.judge.Entry.LeadProof;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;

class JudgePropertiesTest {

    /** An entry without its time, and how long after the one before it comes. */
    private record Draft(long afterMillis, EntryAt entry) {}

    private interface EntryAt {
        Entry at(long millis);
    }

    @Property(tries = 300)
    void any_journal_folds_without_a_fault_and_never_releases_unasked(
            @ForAll("drafts") List<Draft> drafts, @ForAll boolean switched, @ForAll boolean inString) {
        var judge = new Judge(card(switched, inString), Procedure.careful());
        for (Entry entry : journal(drafts)) {
            boolean mayRelease = judge.allowed().contains(Act.RELEASE);
            Phase before = judge.phase();
            judge.fold(entry);
            if (judge.phase() == Phase.RELEASED && before != Phase.RELEASED) {
                assertThat(entry).isInstanceOf(Entry.Acted.class);
                assertThat(((Entry.Acted) entry).act()).isEqualTo(Act.RELEASE);
                assertThat(mayRelease).isTrue();
            }
            assertThat(judge.ampereHours()).isFinite();
            assertThat(judge.wattHours()).isFinite();
            assertThat(judge.remainingMillis()).isNotNegative();
        }
    }

    @Property(tries = 200)
    void the_same_journal_gives_the_same_outcomes(@ForAll("drafts") List<Draft> drafts, @ForAll boolean switched) {
        List<Entry> journal = journal(drafts);
        var one = new Judge(card(switched, false), Procedure.careful());
        var other = new Judge(card(switched, false), Procedure.careful());
        List<Outcome> first = journal.stream().map(one::fold).toList();
        List<Outcome> second = journal.stream().map(other::fold).toList();

        assertThat(second).isEqualTo(first);
        assertThat(other.phase()).isEqualTo(one.phase());
        assertThat(other.ampereHours()).isEqualTo(one.ampereHours());
    }

    @Property(tries = 200)
    void a_refused_act_changes_nothing(@ForAll("drafts") List<Draft> drafts, @ForAll Act act) {
        List<Entry> journal = journal(drafts);
        var without = new Judge(card(true, false), Procedure.careful());
        var with = new Judge(card(true, false), Procedure.careful());
        List<Outcome> plain = new ArrayList<>();
        List<Outcome> pestered = new ArrayList<>();
        for (Entry entry : journal) {
            plain.add(without.fold(entry));
            pestered.add(with.fold(entry));
            if (!with.allowed().contains(act)) {
                assertThat(with.fold(new Entry.Acted(entry.eventMillis(), act))).isEqualTo(Outcome.NOTHING);
            }
        }

        assertThat(pestered).isEqualTo(plain);
    }

    @Property(tries = 200)
    void nothing_locked_ever_asks_for_its_load(@ForAll("drafts") List<Draft> drafts) {
        var judge = new Judge(card(true, false), Procedure.careful());
        for (Entry entry : journal(drafts)) {
            Outcome outcome = judge.fold(entry);
            if (judge.isLocked()) {
                assertThat(outcome.events()).doesNotContain(new Outcome.Wished(Outcome.Wish.CLOSE_LOAD));
            }
        }
    }

    @Provide
    Arbitrary<List<Draft>> drafts() {
        Arbitrary<Double> volts = Arbitraries.oneOf(
                Arbitraries.doubles().between(-0.1, 0.6),
                Arbitraries.doubles().between(1, 4.3),
                Arbitraries.of(0.0, -0.0, Double.NaN, 3.4e38, Double.POSITIVE_INFINITY, -4.0));
        Arbitrary<Double> celsius = Arbitraries.frequencyOf(
                Tuple.of(20, Arbitraries.doubles().between(15, 30)),
                Tuple.of(1, Arbitraries.of(85.0, -127.0, 61.0, Double.NaN, 3.4e38)));
        Arbitrary<Double> amperes = Arbitraries.of(Double.NaN, 0.3, 0.0, -1.0, 3.4e38, Double.NEGATIVE_INFINITY);
        Arbitrary<EntryAt> scan = Combinators.combine(
                        volts,
                        celsius,
                        amperes,
                        Arbitraries.of(true, false),
                        Arbitraries.frequency(Tuple.of(20, Suspicion.NONE), Tuple.of(1, Suspicion.VOLTS_AT_RAIL)))
                .as((v, c, a, on, suspicion) ->
                        at -> new Entry.Scan(at, v, 2e-3, 1e-4, a, c, 21, Double.NaN, Double.NaN, on, suspicion));
        Arbitrary<EntryAt> act = Arbitraries.of(Act.class).map(done -> at -> new Entry.Acted(at, done));
        Arbitrary<EntryAt> gap =
                Arbitraries.longs().between(0, 200_000_000).map(most -> at -> new Entry.Gap(at, most / 2, most));
        Arbitrary<EntryAt> endless = Arbitraries.just(at -> new Entry.Gap(at, 0, Long.MAX_VALUE));
        Arbitrary<EntryAt> lead = Arbitraries.of(LeadProof.class).map(proof -> at -> new Entry.LeadChecked(at, proof));
        Arbitrary<EntryAt> others = Arbitraries.of(
                Entry.Silence::new,
                Entry.Reboot::new,
                Entry.CalibrationChanged::new,
                Entry.StringOpened::new,
                at -> new Entry.ClockJudged(at, true),
                at -> new Entry.ClockJudged(at, false),
                at -> new Entry.Announced(at, at + 60_000),
                at -> new Entry.Moved(at, "board", 2),
                at -> new Entry.ProcedureChanged(at, Procedure.strict()),
                at -> new Entry.ProcedureChanged(at, Procedure.careful()));
        Arbitrary<EntryAt> meter = volts.map(read -> at -> new Entry.Metered(at, read));
        Arbitrary<EntryAt> entry = Arbitraries.frequencyOf(
                Tuple.of(30, scan),
                Tuple.of(8, act),
                Tuple.of(1, gap),
                Tuple.of(1, endless),
                Tuple.of(2, lead),
                Tuple.of(2, others),
                Tuple.of(1, meter));
        Arbitrary<Long> after = Arbitraries.frequencyOf(
                Tuple.of(20, Arbitraries.of(0L, 1_000L, 2_000L, 4_000L)),
                Tuple.of(1, Arbitraries.longs().between(0, 100_000_000)));
        return Combinators.combine(after, entry).as(Draft::new).list().ofMaxSize(300);
    }

    private static List<Entry> journal(List<Draft> drafts) {
        List<Entry> entries = new ArrayList<>();
        long millis = 0;
        for (Draft draft : drafts) {
            millis += draft.afterMillis();
            entries.add(draft.entry().at(millis));
        }
        return entries;
    }

    private static CellCard card(boolean switched, boolean inString) {
        return new CellCard("A1", Chemistry.LAYERED_OXIDE, 3.0, 10.0, switched, inString);
    }
}
