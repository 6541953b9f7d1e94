package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;
import static org.ebbwatch.handwork.QuietRack.BOARD;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry.Work;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskAnswer.Done;
import org.ebbwatch.passage.DeskAnswer.KeyUsed;
import org.ebbwatch.passage.DeskAnswer.NotNow;
import org.ebbwatch.passage.DeskAnswer.Stale;
import org.ebbwatch.passage.DeskAnswer.Taken;
import org.ebbwatch.passage.DeskAnswer.UnfitChannel;
import org.ebbwatch.passage.DeskAnswer.UnknownBoard;
import org.ebbwatch.passage.DeskAnswer.UnknownPassage;
import org.ebbwatch.passage.DeskRequest.Announce;
import org.ebbwatch.passage.DeskRequest.Blink;
import org.ebbwatch.passage.DeskRequest.CheckIn;
import org.ebbwatch.passage.DeskRequest.Do;
import org.ebbwatch.passage.DeskRequest.Meter;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.Receipt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WatchDeskTest extends DeskBench {
    @Nested
    class Checking_in {
        @Test
        void opens_a_passage_and_gives_its_receipt() {
            Receipt receipt = done(checkIn(SWITCHED, card("A", true, false)));

            assertThat(receipt.phase()).isEqualTo(Phase.CHECK_IN);
            assertThat(receipt.channel()).isEqualTo(SWITCHED);
            assertThat(receipt.sequence()).isEqualTo(passage(receipt.passage()).sequence());
            assertThat(rack.openPassages()).hasSize(1);
        }

        @Test
        void on_a_board_there_is_not_names_those_there_are() {
            DeskAnswer answer = ask(new CheckIn("attic", 0, card("A", true, false), Procedure.careful()));

            assertThat(answer).isEqualTo(new UnknownBoard("attic", List.of(BOARD)));
            assertThat(rack.view().passages()).isEmpty();
        }

        @ParameterizedTest
        @ValueSource(ints = {-1, AMBIENT, WATCH, 7, 400})
        void on_what_is_no_cell_channel_names_those_that_are(int channel) {
            DeskAnswer answer = ask(checkIn(channel, card("A", false, false)));

            assertThat(answer)
                    .isEqualTo(new UnfitChannel(
                            BOARD, channel, "Channel " + channel + " is no cell channel.", List.of(0, 1, 2)));
            assertThat(rack.view().passages()).isEmpty();
        }

        @Test
        void a_switched_load_needs_a_channel_with_a_switch() {
            assertThat(ask(checkIn(BY_HAND, card("B", true, false))))
                    .isInstanceOfSatisfying(UnfitChannel.class, refused -> assertThat(refused.fit())
                            .containsExactly(SWITCHED, FREE));
        }

        @Test
        void a_cell_of_a_string_needs_a_board_that_measures_every_second() {
            assertThat(ask(checkIn(SWITCHED, ofString("A"))))
                    .isInstanceOfSatisfying(UnfitChannel.class, refused -> assertThat(refused.why())
                            .contains("2000 ms"));
        }

        @Test
        void a_channel_or_a_tag_that_is_taken_says_by_which_passage() {
            UUID first = checkedIn(SWITCHED).id();

            assertThat(ask(checkIn(SWITCHED, card("C", true, false))))
                    .isEqualTo(new Taken("Channel 0 of board bench", first, "A"));
            assertThat(ask(checkIn(FREE, card("A", true, false)))).isEqualTo(new Taken("The tag A", first, "A"));
            assertThat(rack.view().passages()).hasSize(1);
        }
    }

    @Nested
    class Acting {
        @Test
        void what_the_phase_allows_is_done_and_answered_with_the_new_sequence() {
            PassageView before = checkedIn(SWITCHED);

            Receipt receipt = done(new Do(before.id(), before.sequence(), Act.PUT_ON));

            assertThat(receipt.phase()).isEqualTo(Phase.DRAIN);
            assertThat(receipt.sequence()).isGreaterThan(before.sequence());
            assertThat(passage(before.id()).sequence()).isEqualTo(receipt.sequence());
            assertThat(rack.journal(before.id())).anyMatch(line -> line.contains("PUT_ON"));
        }

        @Test
        void what_it_does_not_allow_is_refused_with_phase_request_and_what_is_allowed() {
            PassageView before = checkedIn(SWITCHED);

            refusedWithoutATrace(before.id(), () -> assertThat(ask(new Do(before.id(), before.sequence(), Act.RELEASE)))
                    .isInstanceOfSatisfying(NotNow.class, refused -> {
                        assertThat(refused.phase()).isEqualTo(Phase.CHECK_IN);
                        assertThat(refused.request()).isEqualTo("RELEASE");
                        assertThat(refused.allowed()).containsExactlyInAnyOrder(Act.PUT_ON, Act.WITHDRAW);
                        assertThat(refused.why()).isNotBlank();
                    }));
        }

        @Test
        void whoever_saw_an_older_passage_must_look_again() {
            PassageView before = checkedIn(SWITCHED);
            long now = done(new Announce(before.id(), before.sequence(), Work.TOUCH, 5))
                    .sequence();

            refusedWithoutATrace(before.id(), () -> assertThat(ask(new Do(before.id(), before.sequence(), Act.PUT_ON)))
                    .isEqualTo(new Stale(before.id(), before.sequence(), now)));
        }

        @Test
        void readings_and_lead_checks_alone_make_nobody_look_again() {
            PassageView before = checkedIn(SWITCHED);
            rack.pass(HOUR);

            assertThat(passage(before.id()).sequence()).isEqualTo(before.sequence());
        }

        @Test
        void a_passage_there_is_not_is_unknown() {
            UUID nobody = new UUID(7, 7);

            assertThat(ask(new Do(nobody, 0, Act.WITHDRAW))).isEqualTo(new UnknownPassage(nobody));
        }

        @Test
        void nothing_can_be_done_to_a_passage_that_is_over() {
            PassageView before = checkedIn(SWITCHED);
            long sequence =
                    done(new Do(before.id(), before.sequence(), Act.WITHDRAW)).sequence();

            assertThat(ask(new Meter(before.id(), sequence, 3.7)))
                    .isEqualTo(new NotNow(Phase.WITHDRAWN, "meter reading", Set.of(), "The passage is over."));
        }

        @Test
        void the_kind_of_announced_work_stands_in_the_journal() {
            PassageView before = checkedIn(SWITCHED);
            done(new Announce(before.id(), before.sequence(), Work.TOUCH, 5));

            assertThat(rack.journal(before.id()))
                    .anyMatch(line -> line.contains("Announced") && line.contains("TOUCH"));
        }

        @Test
        void a_channel_blinks_and_nothing_is_entered() {
            PassageView before = checkedIn(SWITCHED);
            List<String> journal = rack.journal(before.id());

            done(new Blink(before.id(), before.sequence(), 10));
            rack.step();

            assertThat(rack.hands().truth(SWITCHED).blinking()).isTrue();
            assertThat(rack.journal(before.id())).isEqualTo(journal);
            assertThat(passage(before.id()).sequence()).isEqualTo(before.sequence());
        }

        @ParameterizedTest
        @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 1e300, -1e300, 5.6, -5.6})
        void no_meter_reads_that(double volts) {
            assertThatThrownBy(() -> new Meter(new UUID(0, 1), 0, volts))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("-5.5 to 5.5");
        }
    }

    @Nested
    class The_same_key {
        @Test
        void gives_the_same_answer_and_does_nothing_again_even_in_another_run() {
            PassageView before = checkedIn(SWITCHED);
            Do putOn = new Do(before.id(), before.sequence(), Act.PUT_ON);
            DeskAnswer first = rack.ask(putOn, "put the load on");
            List<String> journal = rack.journal(before.id());

            assertThat(rack.ask(putOn, "put the load on")).isEqualTo(first);
            rack.close();
            rack = rack.again(records);
            assertThat(rack.ask(putOn, "put the load on")).isEqualTo(first);
            assertThat(rack.journal(before.id()).stream().filter(line -> line.contains("Acted")))
                    .containsExactlyElementsOf(journal.stream()
                            .filter(line -> line.contains("Acted"))
                            .toList());
        }

        @Test
        void opens_one_passage_only() {
            CheckIn checkIn = checkIn(SWITCHED, card("A", true, false));

            assertThat(rack.ask(checkIn, "cell A comes in")).isEqualTo(rack.ask(checkIn, "cell A comes in"));
            assertThat(rack.view().passages()).hasSize(1);
        }

        @Test
        void is_not_taken_for_another_request() {
            PassageView before = checkedIn(SWITCHED);
            long sequence = done(new Announce(before.id(), before.sequence(), Work.TOUCH, 5))
                    .sequence();
            String used = "request-" + keys;

            refusedWithoutATrace(
                    before.id(), () -> assertThat(rack.ask(new Do(before.id(), sequence, Act.PUT_ON), used))
                            .isEqualTo(new KeyUsed(used)));
        }

        @Test
        void may_be_used_again_after_a_refusal() {
            PassageView before = checkedIn(SWITCHED);
            rack.ask(new Do(before.id(), before.sequence() + 1, Act.PUT_ON), "stale at first");

            assertThat(rack.ask(new Do(before.id(), before.sequence(), Act.PUT_ON), "stale at first"))
                    .isInstanceOf(Done.class);
        }
    }

    @Test
    void while_the_records_are_away_a_request_is_done_once_and_says_that_it_is_not_on_disk_yet() throws SQLException {
        PassageView before = checkedIn(SWITCHED);
        Do putOn = new Do(before.id(), before.sequence(), Act.PUT_ON);
        sql("alter table receipt rename to receipt_away");

        DeskAnswer first = rack.ask(putOn, "put the load on");
        assertThat(first).isInstanceOfSatisfying(Done.class, done -> {
            assertThat(done.onDisk()).isFalse();
            assertThat(done.receipt().phase()).isEqualTo(Phase.DRAIN);
        });
        Receipt receipt = ((Done) first).receipt();
        assertThat(rack.ask(putOn, "put the load on")).isEqualTo(new Done(receipt, false));
        assertThat(rack.journal(before.id()))
                .filteredOn(line -> line.contains("PUT_ON"))
                .isEmpty();
        sql("alter table receipt_away rename to receipt");
        await().untilAsserted(() -> assertThat(rack.journal(before.id()))
                .as("it is tried again every 2 s")
                .filteredOn(line -> line.contains("PUT_ON"))
                .hasSize(1));
        rack.close();
        rack = rack.again(records);
        assertThat(rack.ask(putOn, "put the load on")).isEqualTo(new Done(receipt, true));
    }

    /** Does something to the database behind the service's back. */
    private void sql(String statement) throws SQLException {
        String url = "jdbc:h2:async:" + records.toAbsolutePath().resolve("ebbwatch");
        try (Connection connection = DriverManager.getConnection(url, "sa", "");
                Statement work = connection.createStatement()) {
            work.execute(statement);
        }
    }
}
