package org.ebbwatch.web.metrics;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.MultiGauge;
import io.micrometer.core.instrument.MultiGauge.Row;
import io.micrometer.core.instrument.Tags;
import jakarta.inject.Singleton;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.web.answer.Freshness;

/**
 * The rack as gauges. All of them are set from one view whenever they are read, and are held here: a gauge whose object
 * nobody holds turns to NaN. The readings of a stale board are NaN, so that nobody draws a line through them.
 */
@Singleton
final class RackGauges {
    private final RackSource source;
    private final Freshness freshness;
    private final MultiGauge volts;
    private final MultiGauge celsius;
    private final MultiGauge loadApplied;
    private final MultiGauge connected;
    private final MultiGauge age;
    private final MultiGauge passages;
    private final MultiGauge findings;
    private final LinkGauges lines;

    RackGauges(RackSource source, Freshness freshness, MeterRegistry registry) {
        this.source = source;
        this.freshness = freshness;
        volts = gauge(registry, "ebbwatch.volts", "Latest voltage of a channel");
        celsius = gauge(registry, "ebbwatch.celsius", "Latest temperature of a channel");
        loadApplied = gauge(registry, "ebbwatch.load.applied", "1 where the load of a channel is on");
        connected = gauge(registry, "ebbwatch.board.connected", "1 where a board has proven who it is");
        age = gauge(registry, "ebbwatch.scan.age.seconds", "Host time since the last scan of a board");
        passages = gauge(registry, "ebbwatch.passages", "Passages by phase");
        findings = gauge(registry, "ebbwatch.findings", "Standing findings by kind");
        lines = new LinkGauges(registry);
    }

    private static MultiGauge gauge(MeterRegistry registry, String name, String description) {
        return MultiGauge.builder(name).description(description).register(registry);
    }

    synchronized void refresh() {
        RackView view = source.view();
        lines.set(source.linkQualities());
        Map<String, Boolean> fresh = new HashMap<>();
        view.boards().forEach(board -> fresh.put(board.name(), !freshness.isStale(board)));
        set(connected, view.boards(), RackGauges::tags, board -> board.link() == LinkState.CONNECTED ? 1 : 0);
        set(age, view.boards(), RackGauges::tags, freshness::ageSeconds);
        Predicate<ChannelView> believed = channel -> fresh.getOrDefault(channel.board(), false);
        channels(volts, view, channel -> believed.test(channel) ? channel.volts() : Double.NaN);
        channels(celsius, view, channel -> believed.test(channel) ? channel.celsius() : Double.NaN);
        channels(loadApplied, view, channel -> !believed.test(channel) ? Double.NaN : channel.loadApplied() ? 1 : 0);
        set(
                passages,
                List.of(Phase.values()),
                phase -> Tags.of("phase", phase.name()),
                phase -> view.passages().stream()
                        .filter(passage -> passage.phase() == phase)
                        .count());
        set(
                findings,
                List.of(FindingKind.values()),
                kind -> Tags.of("kind", kind.name()),
                kind -> standing(view, kind));
    }

    private static void channels(MultiGauge gauge, RackView view, ToDoubleFunction<ChannelView> reading) {
        set(gauge, view.channels(), RackGauges::tags, reading);
    }

    private static <T> void set(MultiGauge gauge, List<T> things, Function<T, Tags> tags, ToDoubleFunction<T> number) {
        gauge.register(
                things.stream()
                        .map(thing -> Row.of(tags.apply(thing), number.applyAsDouble(thing)))
                        .toList(),
                true);
    }

    private static long standing(RackView view, FindingKind kind) {
        return view.passages().stream()
                .filter(passage -> !passage.phase().isOver())
                .map(PassageView::findings)
                .flatMap(List::stream)
                .filter(finding -> finding.kind() == kind)
                .count();
    }

    private static Tags tags(BoardView board) {
        return Tags.of("board", board.name());
    }

    private static Tags tags(ChannelView channel) {
        return Tags.of("board", channel.board(), "channel", Integer.toString(channel.channel()));
    }
}
