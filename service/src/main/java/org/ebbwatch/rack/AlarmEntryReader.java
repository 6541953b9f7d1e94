package org.ebbwatch.rack;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import org.ebbwatch.judge.FindingKind.Urgency;
import org.ebbwatch.rack.OutletEntry.HoursEntry;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads what a rack file says of alarms. */
final class AlarmEntryReader {
    private static final List<String> ALARM_KEYS = List.of("night", "publicAddress", "outlets", "webhook");
    private static final List<String> TIME_KEYS = List.of("from", "to");
    private static final List<String> OUTLET_KEYS =
            List.of("name", "from", "hours", "escalateAfterMinutes", "webhook", "mail", "mqtt", "buzzer");
    private static final List<String> URGENCIES = List.of("advisory", "ringing", "danger");
    private static final Pattern TIME = Pattern.compile("([01][0-9]|2[0-3]):[0-5][0-9]");
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,39}");
    private static final int LONGEST_ESCALATION_MINUTES = 1_440;

    private final Faults faults;
    private final WayReader ways;
    private final List<OutletEntry> outlets = new ArrayList<>();

    AlarmEntryReader(Faults faults, Path folder) {
        this.faults = faults;
        this.ways = new WayReader(faults, folder);
    }

    AlarmEntry read(Node node) {
        var alarms = new YamlMapping(node, "alarms", ALARM_KEYS, faults);
        Optional<YamlMapping> night = alarms.node("night").map(it -> new YamlMapping(it, "night", TIME_KEYS, faults));
        if (alarms.has("webhook")) {
            alarms.fault("webhook", "webhook stands in a list now, so that there can be more: outlets, then - webhook");
        }
        alarms.list("outlets").forEach(this::outlet);
        return new AlarmEntry(
                night.filter(it -> it.has("from"))
                        .flatMap(it -> time(it, "from"))
                        .orElse(AlarmEntry.USUAL.nightFrom()),
                night.filter(it -> it.has("to")).flatMap(it -> time(it, "to")).orElse(AlarmEntry.USUAL.nightTo()),
                alarms.has("publicAddress") ? publicAddress(alarms) : Optional.empty(),
                outlets);
    }

    private static Optional<LocalTime> time(YamlMapping mapping, String key) {
        String allowed = key + " is a local time from 00:00 to 23:59, in quotes";
        Optional<String> text = mapping.text(key, allowed);
        if (text.isPresent() && !TIME.matcher(text.get()).matches()) {
            mapping.fault(key, key + " \"" + text.get() + "\" is not allowed; " + allowed);
            return Optional.empty();
        }
        return text.map(LocalTime::parse);
    }

    private static Optional<URI> publicAddress(YamlMapping alarms) {
        String allowed = "publicAddress is how a browser reaches this service, such as https://rack.example";
        Optional<String> text = alarms.text("publicAddress", allowed);
        Optional<URI> address = text.flatMap(AlarmEntryReader::bareAddress);
        if (text.isPresent() && address.isEmpty()) {
            alarms.fault("publicAddress", allowed + ", without a path");
        }
        return address;
    }

    private static Optional<URI> bareAddress(String text) {
        try {
            URI uri = new URI(text.endsWith("/") ? text.substring(0, text.length() - 1) : text);
            boolean bare = uri.getHost() != null
                    && Set.of("http", "https").contains(String.valueOf(uri.getScheme()))
                    && uri.getRawPath().isEmpty()
                    && uri.getRawQuery() == null
                    && uri.getRawFragment() == null
                    && uri.getRawUserInfo() == null;
            return Optional.of(uri).filter(it -> bare);
        } catch (URISyntaxException notAnAddress) {
            return Optional.empty();
        }
    }

    private void outlet(Node node) {
        var outlet = new YamlMapping(node, "an outlet", OUTLET_KEYS, faults);
        List<String> kinds = WayReader.KINDS.stream().filter(outlet::has).toList();
        if (kinds.size() != 1) {
            if (WayReader.KINDS.stream().anyMatch(outlet::isMisspelt)) {
                return;
            }
            faults.add(outlet.line(), "an outlet has one of " + String.join(", ", WayReader.KINDS));
            return;
        }
        String kind = kinds.get(0);
        Optional<String> name = outlet.has("name") ? name(outlet) : Optional.of(kind);
        if (name.isPresent() && outlets.stream().anyMatch(it -> it.name().equals(name.get()))) {
            outlet.fault("name", "there is an outlet named " + name.get() + " already; give each its own name");
        }
        Urgency from = outlet.has("from")
                ? outlet.choice("from", URGENCIES)
                        .map(it -> Urgency.valueOf(it.toUpperCase(Locale.ROOT)))
                        .orElse(Urgency.ADVISORY)
                : Urgency.ADVISORY;
        OptionalInt escalateAfter = outlet.has("escalateAfterMinutes")
                ? outlet.whole("escalateAfterMinutes", 1, LONGEST_ESCALATION_MINUTES)
                : OptionalInt.empty();
        Optional<HoursEntry> hours = outlet.node("hours").flatMap(this::hours);
        Optional<WayEntry> way = ways.read(kind, outlet.node(kind).orElseThrow());
        if (name.isPresent() && way.isPresent()) {
            outlets.add(new OutletEntry(name.get(), from, hours, escalateAfter, way.get()));
        }
    }

    private static Optional<String> name(YamlMapping outlet) {
        String allowed =
                "name is 1 to 40 letters, digits, spaces, points, dashes and underscores, and begins with a letter"
                        + " or digit";
        Optional<String> name = outlet.text("name", allowed);
        if (name.isPresent() && !NAME.matcher(name.get()).matches()) {
            outlet.fault("name", "name \"" + name.get() + "\" is not allowed; " + allowed);
            return Optional.empty();
        }
        return name;
    }

    private Optional<HoursEntry> hours(Node node) {
        var hours = new YamlMapping(node, "hours", TIME_KEYS, faults);
        Optional<LocalTime> from = time(hours, "from");
        Optional<LocalTime> to = time(hours, "to");
        if (from.isPresent() && from.equals(to)) {
            hours.fault("to", "from and to are the same: no hour is left; leave hours out for all of them");
        }
        return from.flatMap(begin -> to.map(end -> new HoursEntry(begin, end)));
    }
}
