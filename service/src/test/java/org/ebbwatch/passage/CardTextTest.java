package org.ebbwatch.passage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.LoadTolerance;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.DeskRequest.CheckIn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Cards and procedures as records and bundles keep them. */
class CardTextTest {
    private static final String OLD =
            """
            {"tag":"A-17","chemistry":"LFP","ratedAmpereHours":2.6,"loadOhms":22.0,"switched":true,"inString":false}""";

    @Test
    void a_card_from_before_loads_had_a_tolerance_is_read_as_one_where_nobody_said() {
        CellCard card = RecordJson.read(CellCard.class, OLD);

        assertThat(card).isEqualTo(new CellCard("A-17", Chemistry.LFP, 2.6, 22, true, false));
        assertThat(card.loadTolerance()).isEmpty();
        assertThat(RecordJson.write(card)).isEqualTo(OLD);
    }

    @Test
    void a_tolerance_is_kept_with_the_card() {
        CellCard card = within(0.01);

        assertThat(RecordJson.write(card)).contains("\"loadTolerance\":{\"share\":0.01}");
        assertThat(RecordJson.read(CellCard.class, RecordJson.write(card))).isEqualTo(card);
    }

    @Test
    void a_tolerance_no_load_may_have_is_not_read() {
        String text = RecordJson.write(within(0.01)).replace("0.01", "0.21");

        assertThatThrownBy(() -> RecordJson.read(CellCard.class, text)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void a_check_in_with_another_tolerance_is_another_request() {
        var unsaid = new CellCard("A-17", Chemistry.LFP, 2.6, 22, true, false);

        assertThat(text(within(0.01))).isNotEqualTo(text(within(0.05))).isNotEqualTo(text(unsaid));
        assertThat(text(within(0.01))).isEqualTo(text(within(0.01)));
    }

    @ParameterizedTest
    @EnumSource(BuiltIn.class)
    void every_procedure_is_kept_whole(BuiltIn rule) {
        String text = RecordJson.write(rule.procedure());

        assertThat(RecordJson.read(Procedure.class, text)).isEqualTo(rule.procedure());
    }

    private static String text(CellCard card) {
        return new CheckIn("bench", 0, card, Procedure.careful()).text();
    }

    private static CellCard within(double share) {
        return new CellCard(
                "A-17", Chemistry.LFP, 2.6, 22, true, false, Optional.empty(), Optional.of(new LoadTolerance(share)));
    }
}
