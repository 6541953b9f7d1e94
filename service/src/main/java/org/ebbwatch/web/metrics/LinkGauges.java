package org.ebbwatch.web.metrics;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.MultiGauge;
import io.micrometer.core.instrument.MultiGauge.Row;
import io.micrometer.core.instrument.Tags;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.ebbwatch.acquire.LinkQuality;

/** How good the lines to the boards are, as gauges. Counts are those since the service began. */
final class LinkGauges {
    private static final double MILLIS_PER_SECOND = 1_000;

    private final Map<MultiGauge, ToDoubleFunction<LinkQuality>> gauges = new LinkedHashMap<>();

    LinkGauges(MeterRegistry registry) {
        add(registry, "frames", "Intact frames of a board", LinkQuality::frames);
        add(registry, "crc.errors", "Frames of a board whose checksum did not fit", LinkQuality::crcErrors);
        add(registry, "other.bad.frames", "Frames of a board dropped otherwise", LinkQuality::otherBadFrames);
        add(registry, "frames.missed", "Times that frames of a board were missing", LinkQuality::framesMissed);
        add(registry, "scans", "Complete scans of a board", LinkQuality::scans);
        add(registry, "partial.scans", "Scans of a board of which a part was missing", LinkQuality::partialScans);
        add(registry, "gaps", "Times that scans of a board were missing", LinkQuality::gaps);
        add(registry, "silences", "Times that a board was silent", LinkQuality::silences);
        add(
                registry,
                "jitter.seconds",
                "How much scans of a board come early or late",
                quality -> quality.jitterMillis() / MILLIS_PER_SECOND);
        add(
                registry,
                "round.trip.seconds",
                "From a question to a board to its answer",
                quality -> quality.roundTripMillis() / MILLIS_PER_SECOND);
    }

    private void add(MeterRegistry registry, String name, String description, ToDoubleFunction<LinkQuality> number) {
        gauges.put(
                MultiGauge.builder("ebbwatch.link." + name)
                        .description(description)
                        .register(registry),
                number);
    }

    void set(Map<String, LinkQuality> qualities) {
        gauges.forEach((gauge, number) -> gauge.register(
                qualities.entrySet().stream()
                        .map(each -> Row.of(Tags.of("board", each.getKey()), number.applyAsDouble(each.getValue())))
                        .toList(),
                true));
    }
}
