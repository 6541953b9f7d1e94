package org.ebbwatch.acquire;

import static org.assertj.core.api.Assertions.assertThat;

import org.ebbwatch.acquire.Happening.Answered;
import org.ebbwatch.acquire.Happening.Identified;
import org.ebbwatch.acquire.Happening.Lead;
import org.ebbwatch.acquire.Happening.Link;
import org.ebbwatch.rig.message.CheckLead;
import org.ebbwatch.rig.message.Done;
import org.ebbwatch.rig.message.Kind;
import org.ebbwatch.rig.message.LeadChecked;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.rig.message.RefusalReason;
import org.ebbwatch.rig.message.Refused;
import org.ebbwatch.rig.message.SetLoad;
import org.junit.jupiter.api.Test;

class SessionRequestsTest extends SessionBench {

    @Test
    void requests_are_sent_and_answered_by_sequence() {
        connect(1, 2);
        int closing = session.setLoad(1, true).orElseThrow();
        int blinking = session.blink(0, 5).orElseThrow();
        assertThat(host.sent.get(0)).isEqualTo(new Frames.Sent(closing, new SetLoad(1, true)));
        board(new Done(blinking, Kind.BLINK.code()));
        Refused refusal = new Refused(closing, Kind.SET_LOAD.code(), 1, RefusalReason.WHILE_BONDED);
        board(refusal);
        assertThat(listener.news())
                .containsExactly(
                        new Answered(blinking, new Answer.Done()), new Answered(closing, new Answer.Refused(refusal)));
    }

    @Test
    void requests_for_a_lead_check_are_answered_by_its_outcome() {
        connect(1, 2);
        int sequence = session.checkLead(1).orElseThrow();
        assertThat(host.messages()).containsExactly(new CheckLead(1));
        board(new LeadChecked(sequence, 1, LeadOutcome.OPEN, 3, 900));
        board(new Done(sequence, Kind.CHECK_LEAD.code()));
        assertThat(listener.news())
                .containsExactly(new Lead(1, LeadOutcome.OPEN, 3, 900), new Answered(sequence, new Answer.Done()));
        assertThat(session.counts().unexpectedAnswers()).isEqualTo(1);
    }

    @Test
    void requests_without_an_answer_time_out_after_two_seconds_and_a_late_answer_is_passed_over() {
        connect(1, 2);
        int sequence = session.setLoad(1, true).orElseThrow();
        pass(1_900);
        assertThat(listener.news()).isEmpty();
        pass(100);
        assertThat(listener.news()).containsExactly(new Answered(sequence, new Answer.TimedOut(2_000)));
        board(new Done(sequence, Kind.SET_LOAD.code()));
        assertThat(listener.news()).isEmpty();
    }

    @Test
    void requests_are_not_answered_by_another_kind() {
        connect(1, 2);
        int sequence = session.setLoad(1, true).orElseThrow();
        board(new Done(sequence, Kind.BLINK.code()));
        assertThat(listener.news()).isEmpty();
    }

    @Test
    void requests_end_with_the_link() {
        connect(1, 2);
        int sequence = session.buzzer(3).orElseThrow();
        session.lost("unplugged", now());
        assertThat(listener.news())
                .containsExactly(new Link(LinkState.LOST), new Answered(sequence, new Answer.TimedOut(0)));
        assertThat(session.setLoad(0, false)).isEmpty();
    }

    @Test
    void requests_end_with_a_restart_of_the_board() {
        connect(1, 2);
        int sequence = session.setLoad(0, true).orElseThrow();
        board(Frames.identity("EB-1", 8, 1, 2));
        assertThat(listener.news())
                .containsExactly(new Answered(sequence, new Answer.TimedOut(0)), new Identified("EB-1"));
    }

    @Test
    void a_lead_check_has_three_seconds() {
        connect(1, 2);
        int sequence = session.checkLead(1).orElseThrow();
        pass(2_900);
        assertThat(listener.news()).isEmpty();
        pass(100);
        assertThat(listener.news()).containsExactly(new Answered(sequence, new Answer.TimedOut(3_000)));
    }
}
