package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.handwork.QuietRack.BOARD;

import java.util.List;
import java.util.UUID;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.DeskAnswer.NotNow;
import org.ebbwatch.passage.DeskAnswer.Stale;
import org.ebbwatch.passage.DeskAnswer.Taken;
import org.ebbwatch.passage.DeskAnswer.UnfitChannel;
import org.ebbwatch.passage.DeskRequest.Do;
import org.ebbwatch.passage.DeskRequest.Move;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.Receipt;
import org.junit.jupiter.api.Test;

class MovesAndHandLoadsTest extends DeskBench {
    @Test
    void a_move_is_refused_while_a_load_is_on() {
        PassageView before = checkedIn(SWITCHED);
        long sequence = done(new Do(before.id(), before.sequence(), Act.PUT_ON)).sequence();

        refusedWithoutATrace(before.id(), () -> assertThat(ask(new Move(before.id(), sequence, FREE)))
                .isInstanceOfSatisfying(
                        NotNow.class, refused -> assertThat(refused.why()).startsWith("Take the load off first")));
    }

    @Test
    void a_move_to_a_thermometer_is_for_bonded_cells_only() {
        PassageView before = checkedIn(SWITCHED);

        assertThat(ask(new Move(before.id(), before.sequence(), WATCH)))
                .isInstanceOfSatisfying(UnfitChannel.class, refused -> {
                    assertThat(refused.why()).contains("measures no volts");
                    assertThat(refused.fit()).containsExactly(FREE);
                });
    }

    @Test
    void a_move_to_a_channel_that_is_taken_says_by_whom() {
        PassageView before = checkedIn(BY_HAND);
        UUID other = checkedIn(SWITCHED).id();

        assertThat(ask(new Move(before.id(), before.sequence(), SWITCHED)))
                .isEqualTo(new Taken("Channel 0 of board bench", other, "A"));
    }

    @Test
    void a_move_follows_the_readings_of_the_other_channel_and_frees_the_first() {
        PassageView before = checkedIn(SWITCHED);
        rack.hands().move(SWITCHED, FREE);

        Receipt receipt = done(new Move(before.id(), before.sequence(), FREE));
        rack.pass(60_000);

        assertThat(receipt.channel()).isEqualTo(FREE);
        assertThat(passage(before.id()).channel()).isEqualTo(FREE);
        assertThat(rack.view().on(BOARD, SWITCHED)).isEmpty();
        assertThat(rack.trace(before.id(), RackSource.Window.ALL, 1_000).orElseThrow())
                .allSatisfy(point -> assertThat(point.volts()).isGreaterThan(3));
    }

    @Test
    void a_passage_that_was_moved_is_taken_up_on_its_new_channel() {
        PassageView before = checkedIn(SWITCHED);
        rack.hands().move(SWITCHED, FREE);
        done(new Move(before.id(), before.sequence(), FREE));
        rack.pass(60_000);
        rack.close();
        rack = rack.again(records);
        rack.pass(60_000);

        assertThat(passage(before.id()).channel()).isEqualTo(FREE);
        assertThat(rack.view().on(BOARD, FREE)).map(PassageView::id).contains(before.id());
        List<List<String>> twice = rack.recordedAndFoldedAgain(before.id());
        assertThat(twice.get(1)).isEqualTo(twice.get(0));
    }

    @Test
    void a_load_put_on_by_hand_without_a_word_is_recognised_and_may_still_be_said() {
        PassageView before = checkedIn(BY_HAND);
        rack.hands().handLoad(BY_HAND, true);
        rack.pass(3 * 60_000);

        PassageView drains = passage(before.id());
        assertThat(drains.phase()).isEqualTo(Phase.DRAIN);
        assertThat(drains.reason()).isEqualTo("the load seems to have been put on");
        assertThat(drains.seems()).isEmpty();
        assertThat(ask(new Do(before.id(), before.sequence(), Act.PUT_ON))).isInstanceOf(Stale.class);
        assertThat(done(new Do(before.id(), drains.sequence(), Act.PUT_ON)).phase())
                .isEqualTo(Phase.DRAIN);
    }

    @Test
    void a_load_taken_off_by_hand_without_a_word_is_recognised_and_asked_for_again() {
        PassageView before = checkedIn(BY_HAND);
        rack.hands().handLoad(BY_HAND, true);
        done(new Do(before.id(), before.sequence(), Act.PUT_ON));
        rack.pass(HOUR);
        rack.hands().handLoad(BY_HAND, false);
        rack.pass(2 * 60_000);

        PassageView drains = passage(before.id());
        assertThat(drains.loadOn()).isFalse();
        assertThat(drains.phase()).isEqualTo(Phase.DRAIN);
        assertThat(drains.past()).anyMatch(past -> past.line().contains("seems to have been taken off early"));
        assertThat(drains.standing()).containsExactly(Wish.ASK_PUT_ON);
        List<List<String>> twice = rack.recordedAndFoldedAgain(before.id());
        assertThat(twice.get(1)).isEqualTo(twice.get(0));
    }
}
