package org.ebbwatch.alarm.mqtt;

import io.micronaut.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.passage.RackView.PassageView;

/** One channel as it stands, as JSON. What is not known is null. */
final class ChannelState {
    private static final JsonMapper MAPPER = JsonMapper.createDefault();
    private static final double MILLI = 1e3;

    private ChannelState() {}

    static String json(RackView rack, ChannelView channel) {
        BoardView board = rack.boards().stream()
                .filter(it -> it.name().equals(channel.board()))
                .findFirst()
                .orElseThrow();
        Optional<PassageView> passage = rack.on(channel.board(), channel.channel());
        Map<String, Object> state = new LinkedHashMap<>();
        state.put("tag", passage.map(PassageView::tag).orElse(null));
        state.put("phase", passage.map(it -> it.phase().name()).orElse(null));
        state.put(
                "findings",
                passage.stream()
                        .flatMap(it -> it.findings().stream())
                        .map(finding -> finding.kind().name())
                        .toList());
        state.put("volts", rounded(channel.volts()));
        state.put("celsius", rounded(channel.celsius()));
        state.put("loadApplied", channel.loadApplied());
        state.put(
                "time",
                board.wallMillis() > 0
                        ? Instant.ofEpochMilli(board.wallMillis()).toString()
                        : null);
        state.put("link", board.link().name());
        state.put("simulated", board.simulatedSpeed() > 0);
        try {
            return MAPPER.writeValueAsString(state);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Double rounded(double number) {
        return Double.isFinite(number) ? Double.valueOf(Math.rint(number * MILLI) / MILLI) : null;
    }
}
