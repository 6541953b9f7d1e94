package org.ebbwatch.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.intake.IntakeReply.Done;
import org.ebbwatch.intake.IntakeReply.KeyUsed;
import org.ebbwatch.intake.IntakeReply.NeedsReason;
import org.ebbwatch.intake.IntakeReply.RecordsAway;
import org.ebbwatch.intake.IntakeReply.StaysOut;
import org.ebbwatch.intake.IntakeReply.VoltsUnfit;
import org.ebbwatch.intake.IntakeRequest.Amend;
import org.ebbwatch.intake.IntakeRequest.Name;
import org.ebbwatch.intake.IntakeRequest.TakeIn;
import org.ebbwatch.intake.rule.CellChemistry;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.IntakeFields;
import org.ebbwatch.intake.rule.ProtectionBoard;
import org.ebbwatch.intake.rule.Triage.Verdict;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.store.IntakeTable;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The desk where cells are taken in. */
class IntakeDeskTest {
    @TempDir
    private Path directory;

    private H2Database database;
    private IntakeDesk desk;
    private int keys;

    @BeforeEach
    void open() {
        database = H2Database.open(directory);
        desk = new IntakeDesk(
                IntakeBook.of(new IntakeTable(database)),
                () -> Set.of("box-002"),
                () -> new HostTime("host", 0, 1_795_593_600_000L, WallQuality.KNOWN));
    }

    @AfterEach
    void close() {
        database.close();
    }

    private void reopen() {
        close();
        open();
    }

    private String key() {
        return "request-" + ++keys;
    }

    static IntakeFields fields(Condition condition, Double volts, String explained) {
        return new IntakeFields(
                Optional.of(CellChemistry.NMC),
                Optional.of(1),
                Optional.of(2.6),
                Optional.of("drill of the harbour workshop"),
                Optional.of(condition),
                Optional.of(ProtectionBoard.NONE),
                Optional.ofNullable(volts),
                Optional.ofNullable(explained),
                Optional.of(45.2),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static IntakeFields condition(Condition condition) {
        IntakeFields nothing = IntakeFields.NOTHING;
        return new IntakeFields(
                nothing.chemistry(),
                nothing.cellsInSeries(),
                nothing.ratedAmpereHours(),
                nothing.origin(),
                Optional.of(condition),
                nothing.protectionBoard(),
                nothing.measuredVolts(),
                nothing.voltsExplained(),
                nothing.massBeforeGrams(),
                nothing.massAfterGrams(),
                nothing.thicknessBeforeMillimetres(),
                nothing.thicknessAfterMillimetres(),
                nothing.note(),
                nothing.photo());
    }

    private static TakeIn named(String tag, IntakeFields fields) {
        return new TakeIn(new Name.Given(tag), Optional.empty(), false, fields, "Anna");
    }

    private IntakeRecord takenIn(String tag, IntakeFields fields) {
        return done(desk.ask(named(tag, fields), key()));
    }

    private static IntakeRecord done(IntakeReply reply) {
        assertThat(reply).isInstanceOf(Done.class);
        return ((Done) reply).record();
    }

    @Test
    void a_card_is_read_back_as_it_was_written_after_a_restart_too() {
        IntakeRecord written = takenIn("A-17", fields(Condition.INTACT, 3.7, null));
        reopen();

        assertThat(desk.records().tagged("A-17")).contains(written);
        assertThat(written.last().by()).isEqualTo("Anna");
        assertThat(written.triage().verdict()).isEqualTo(Verdict.ADMITTED);
    }

    @Test
    void the_same_request_writes_once_across_restarts_and_its_key_serves_no_other() {
        TakeIn request = named("A-17", fields(Condition.INTACT, 3.7, null));
        IntakeRecord written = done(desk.ask(request, "the-same-key"));
        reopen();

        assertThat(desk.ask(request, "the-same-key")).isEqualTo(new Done(written));
        assertThat(desk.ask(named("A-18", fields(Condition.INTACT, 3.7, null)), "the-same-key"))
                .isInstanceOf(KeyUsed.class);
        assertThat(desk.records().latest()).hasSize(1);
    }

    @Test
    void tags_are_numbered_on_and_never_those_of_another_cell() {
        var numbered = new TakeIn(
                new Name.Numbered("box"), Optional.empty(), false, fields(Condition.INTACT, 3.7, null), "Anna");
        assertThat(done(desk.ask(numbered, key())).tag()).isEqualTo("box-001");
        assertThat(done(desk.ask(numbered, key())).tag())
                .as("002 had a passage")
                .isEqualTo("box-003");
        reopen();
        assertThat(done(desk.ask(numbered, key())).tag()).isEqualTo("box-004");
        assertThat(desk.ask(named("box-004", fields(Condition.INTACT, 3.7, null)), key()))
                .isEqualTo(new IntakeReply.TagTaken("box-004"));
    }

    @Test
    void a_box_of_forty_takes_three_words_a_cell() {
        assertThat(desk.ask(
                        new TakeIn(new Name.Numbered("b"), Optional.empty(), true, condition(Condition.INTACT), "A"),
                        key()))
                .isEqualTo(new IntakeReply.NothingToRepeat());
        takenIn("first", fields(Condition.INTACT, 3.7, null));
        for (int i = 0; i < 39; i++) {
            var next = new IntakeFields(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(Condition.DENTED),
                    Optional.of(ProtectionBoard.NONE),
                    Optional.of(3.5),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty());
            IntakeRecord record =
                    done(desk.ask(new TakeIn(new Name.Numbered("b"), Optional.empty(), true, next, "A"), key()));
            assertThat(record.card().origin()).contains("drill of the harbour workshop");
            assertThat(record.card().massBeforeGrams())
                    .as("weighed anew or not at all")
                    .isEmpty();
        }
        assertThat(desk.records().latest()).hasSize(40);
    }

    @Test
    void the_condition_of_the_next_cell_is_never_taken_over() {
        takenIn("first", fields(Condition.INTACT, 3.7, null));

        assertThat(desk.ask(
                        new TakeIn(new Name.Numbered("b"), Optional.of("first"), false, IntakeFields.NOTHING, "A"),
                        key()))
                .isEqualTo(new IntakeReply.Missing("condition"));
    }

    @Test
    void volts_that_do_not_fit_are_refused_until_somebody_says_why() {
        assertThat(desk.ask(named("A", fields(Condition.INTACT, 1.4, null)), key()))
                .isInstanceOf(VoltsUnfit.class);
        assertThat(desk.records().tagged("A")).isEmpty();

        assertThat(takenIn("A", fields(Condition.INTACT, 1.4, "lay in a torch for ten years"))
                        .card()
                        .voltsExplained())
                .isPresent();
        assertThat(desk.ask(named("B", fields(Condition.INTACT, 6.0, "it is so")), key()))
                .as("never taken down")
                .isInstanceOf(VoltsUnfit.class);
    }

    @Test
    void new_volts_are_not_excused_by_the_reason_for_the_old_ones() {
        takenIn("A", fields(Condition.INTACT, 1.4, "lay in a torch for ten years"));

        assertThat(desk.ask(new Amend("A", 1, fields(Condition.INTACT, 4.4, null), "measured anew", "Bo"), key()))
                .isInstanceOf(VoltsUnfit.class);
    }

    @Test
    void what_is_overwritten_takes_a_reason_and_what_stood_there_is_kept() {
        takenIn("A", fields(Condition.WARM, 3.7, null));

        assertThat(desk.ask(new Amend("A", 1, condition(Condition.INTACT), "", "Bo"), key()))
                .isInstanceOf(NeedsReason.class);
        IntakeRecord amended = done(desk.ask(
                new Amend("A", 1, condition(Condition.INTACT), "lay in the sun; cold for a day now", "Bo"), key()));

        assertThat(amended.triage().verdict()).isEqualTo(Verdict.ADMITTED);
        assertThat(amended.revisions()).hasSize(2);
        assertThat(amended.revisions().get(0).card().condition()).contains(Condition.WARM);
        assertThat(amended.last().reason()).startsWith("lay in the sun");
    }

    @Test
    void nobody_writes_on_a_card_he_has_not_seen() {
        takenIn("A", fields(Condition.WARM, 3.7, null));
        desk.ask(new Amend("A", 1, condition(Condition.WET), "rain", "Bo"), key());

        assertThat(desk.ask(new Amend("A", 1, condition(Condition.INTACT), "dry", "Cy"), key()))
                .isEqualTo(new IntakeReply.Stale("A", 1, 2));
    }

    @Test
    void what_was_torn_leaking_or_smelling_stays_out() {
        for (Condition bad : Condition.values()) {
            if (bad.isForGood()) {
                takenIn(bad.name(), fields(bad, null, null));
                assertThat(desk.ask(new Amend(bad.name(), 1, condition(Condition.INTACT), "looks fine", "Bo"), key()))
                        .isEqualTo(new StaysOut(bad.name(), bad));
            }
        }
    }

    @Test
    void a_card_that_cannot_be_written_is_refused_and_nothing_of_it_remains() throws SQLException {
        try (Connection connection = database.dataSource().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("drop table intake");
        }

        assertThat(desk.ask(named("A", fields(Condition.INTACT, 3.7, null)), key()))
                .isInstanceOf(RecordsAway.class);
        assertThat(desk.records().tagged("A")).isEmpty();
    }
}
