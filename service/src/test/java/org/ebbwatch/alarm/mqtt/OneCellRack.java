package org.ebbwatch.alarm.mqtt;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.ClosedPassage;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RestPrediction;
import org.ebbwatch.rig.message.ChannelRole;

/** A rack of one warm cell, an empty channel and an ambient sensor. */
final class OneCellRack implements RackSource {
    private volatile double celsius = 46.5;

    void becomes(double degrees) {
        celsius = degrees;
    }

    @Override
    public RackView view() {
        var card = new PassageCard(
                new UUID(7, 1),
                "shed",
                3,
                new CellCard("A-17", Chemistry.LAYERED_OXIDE, 2, 10, true, false),
                Procedure.careful(),
                0,
                0,
                60);
        var warm = new Finding(FindingKind.WARMING, 5_000, Phase.DRAIN, celsius, 45, "degC", "Warm.");
        var passage = new PassageView(
                card,
                7,
                Phase.DRAIN,
                "",
                1,
                0.5,
                1.5,
                0,
                false,
                true,
                false,
                Optional.empty(),
                List.of(warm),
                Set.of(),
                Set.of(),
                List.of());
        return new RackView(
                List.of(new BoardView("shed", LinkState.CONNECTED, "", "EB-1", 60, 9_000, 1_795_608_000_000L, 0)),
                List.of(
                        new ChannelView("shed", 3, ChannelRole.CELL, 3.81249, 0.002, celsius, Double.NaN, true),
                        new ChannelView(
                                "shed", 4, ChannelRole.CELL, Double.NaN, Double.NaN, Double.NaN, Double.NaN, false),
                        new ChannelView("shed", 5, ChannelRole.AMBIENT, Double.NaN, Double.NaN, 21, Double.NaN, false)),
                List.of(passage));
    }

    @Override
    public Optional<RestPrediction> restPrediction(UUID passage) {
        return Optional.empty();
    }

    @Override
    public Optional<List<TracePoint>> trace(UUID passage, Window window, int points) {
        return Optional.empty();
    }

    @Override
    public List<ClosedPassage> closed(Optional<UUID> before, int most) {
        return List.of();
    }
}
