package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import jakarta.inject.Singleton;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.LinkQuality;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackSource.Window;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.rig.message.ChannelRole;

/** The rack as the outside may see it. Every answer is made from one view, so that its parts agree. Thread-safe. */
@Singleton
public final class Rack {
    private final RackSource source;
    private final Freshness freshness;
    private final HostClock clock;

    Rack(RackSource source, Freshness freshness, HostClock clock) {
        this.source = source;
        this.freshness = freshness;
        this.clock = clock;
    }

    /** Everything that is not over. */
    public RackAnswer now() {
        RackView view = source.view();
        List<BoardAnswer> boards = boards(view);
        return new RackAnswer(
                Figures.wallTime(clock.now().wallMillis()),
                boards.stream().anyMatch(BoardAnswer::simulated),
                Freshness.STALE_AFTER_SECONDS,
                boards,
                channels(view),
                view.passages().stream()
                        .filter(passage -> !passage.phase().isOver())
                        .map(PassageShort::of)
                        .toList(),
                count(view, Phase.RELEASED),
                count(view, Phase.WITHDRAWN),
                view.unwatched());
    }

    public List<BoardAnswer> boards() {
        return boards(source.view());
    }

    public List<ChannelAnswer> channels() {
        return channels(source.view());
    }

    /**
     * The passages, over or not.
     *
     * @param phase null for every phase
     */
    public List<PassageShort> passages(@Nullable Phase phase) {
        return source.view().passages().stream()
                .filter(passage -> phase == null || passage.phase() == phase)
                .map(PassageShort::of)
                .toList();
    }

    /**
     * Passages that are over, the one opened last first.
     *
     * @param before only those opened before the one with that id; null: from the last on
     * @param most how many at most
     */
    public ClosedPassages closed(@Nullable UUID before, int most) {
        return ClosedPassages.of(source.closed(Optional.ofNullable(before), most + 1), most);
    }

    public Optional<PassageAnswer> passage(UUID id) {
        return source.view().passage(id).map(PassageAnswer::of);
    }

    /** The trace of a passage in about so many points; empty if there is no such passage. */
    public Optional<TraceAnswer> trace(UUID id, Window window, int points) {
        return source.trace(id, window, points).map(trace -> TraceAnswer.of(id, trace));
    }

    /** What the voltage of a resting cell comes to; empty where there is nothing to say. */
    public Optional<RestPredictionAnswer> restPrediction(UUID id) {
        return source.restPrediction(id).map(RestPredictionAnswer::of);
    }

    /** What stands on the whole rack, urgent first. */
    public List<RackFinding> findings() {
        return source.view().passages().stream()
                .filter(passage -> !passage.phase().isOver())
                .flatMap(passage -> FindingAnswer.of(passage.findings()).stream()
                        .map(finding -> new RackFinding(
                                passage.id(), passage.tag(), passage.board(), passage.channel(), finding)))
                .sorted(RackFinding.URGENT_FIRST)
                .toList();
    }

    private List<BoardAnswer> boards(RackView view) {
        Map<String, Double> ambient = ambient(view);
        Map<String, LinkQuality> lines = source.linkQualities();
        return view.boards().stream()
                .map(board -> BoardAnswer.of(
                        board, freshness, ambient.getOrDefault(board.name(), Double.NaN), lines.get(board.name())))
                .toList();
    }

    private List<ChannelAnswer> channels(RackView view) {
        Map<String, Double> ambient = ambient(view);
        long now = clock.now().wallMillis();
        return view.channels().stream()
                .map(channel -> ChannelAnswer.of(
                        channel,
                        ambient.getOrDefault(channel.board(), Double.NaN),
                        view.on(channel.board(), channel.channel())
                                .map(PassageView::id)
                                .orElse(null),
                        now))
                .toList();
    }

    /** By board, the first ambient channel: the one the judge goes by. */
    private static Map<String, Double> ambient(RackView view) {
        Map<String, Double> celsius = new HashMap<>();
        for (ChannelView channel : view.channels()) {
            if (channel.role() == ChannelRole.AMBIENT) {
                celsius.putIfAbsent(channel.board(), channel.celsius());
            }
        }
        return celsius;
    }

    private static long count(RackView view, Phase phase) {
        return view.passages().stream()
                .filter(passage -> passage.phase() == phase)
                .count();
    }
}
