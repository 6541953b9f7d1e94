package org.ebbwatch.rack;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ebbwatch.alarm.outlet.WebhookSettings;
import org.ebbwatch.rack.WebhookEntry.Given;
import org.ebbwatch.rack.WebhookEntry.HeaderEntry;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads what a rack file says of alarms. */
final class AlarmEntryReader {
    private static final List<String> ALARM_KEYS = List.of("night", "webhook");
    private static final List<String> NIGHT_KEYS = List.of("from", "to");
    private static final List<String> WEBHOOK_KEYS = List.of("url", "urlEnvironment", "headers");
    private static final List<String> HEADER_KEYS = List.of("name", "value", "valueEnvironment");
    private static final Pattern TIME = Pattern.compile("([01][0-9]|2[0-3]):[0-5][0-9]");
    private static final Pattern VARIABLE = Pattern.compile("[A-Za-z_][A-Za-z0-9_]{0,99}");

    private final Faults faults;

    AlarmEntryReader(Faults faults) {
        this.faults = faults;
    }

    AlarmEntry read(Node node) {
        var alarms = new YamlMapping(node, "alarms", ALARM_KEYS, faults);
        Optional<YamlMapping> night = alarms.node("night").map(it -> new YamlMapping(it, "night", NIGHT_KEYS, faults));
        return new AlarmEntry(
                night.filter(it -> it.has("from"))
                        .flatMap(it -> time(it, "from"))
                        .orElse(AlarmEntry.USUAL.nightFrom()),
                night.filter(it -> it.has("to")).flatMap(it -> time(it, "to")).orElse(AlarmEntry.USUAL.nightTo()),
                alarms.node("webhook").flatMap(this::webhook));
    }

    private static Optional<LocalTime> time(YamlMapping night, String key) {
        String allowed = key + " is a local time from 00:00 to 23:59, in quotes";
        Optional<String> text = night.text(key, allowed);
        if (text.isPresent() && !TIME.matcher(text.get()).matches()) {
            night.fault(key, key + " \"" + text.get() + "\" is not allowed; " + allowed);
            return Optional.empty();
        }
        return text.map(LocalTime::parse);
    }

    private Optional<WebhookEntry> webhook(Node node) {
        var webhook = new YamlMapping(node, "webhook", WEBHOOK_KEYS, faults);
        Optional<Given> url = given(webhook, "url");
        url.flatMap(Given::text).ifPresent(text -> check(webhook, "url", () -> WebhookSettings.checkAddress(text)));
        List<HeaderEntry> headers = new ArrayList<>();
        for (Node each : webhook.list("headers")) {
            var header = new YamlMapping(each, "a header", HEADER_KEYS, faults);
            Optional<String> name = header.text("name", "name is that of an HTTP header");
            name.ifPresent(it -> check(header, "name", () -> WebhookSettings.checkName(it)));
            Optional<Given> value = given(header, "value");
            if (name.isPresent() && value.isPresent()) {
                headers.add(new HeaderEntry(name.get(), value.get()));
            }
        }
        return url.map(it -> new WebhookEntry(it, headers));
    }

    private static void check(YamlMapping mapping, String key, Runnable check) {
        try {
            check.run();
        } catch (IllegalArgumentException e) {
            mapping.fault(key, e.getMessage());
        }
    }

    private Optional<Given> given(YamlMapping mapping, String key) {
        String fromEnvironment = key + "Environment";
        String allowed =
                "give " + key + ", or with " + fromEnvironment + " the name of the environment variable that holds it";
        if (mapping.has(key) == mapping.has(fromEnvironment)) {
            faults.add(mapping.line(), mapping.has(key) ? allowed + ", not both" : allowed);
            return Optional.empty();
        }
        if (mapping.has(key)) {
            return mapping.text(key, allowed).map(text -> new Given(Optional.of(text), Optional.empty()));
        }
        Optional<String> variable = mapping.text(fromEnvironment, allowed);
        if (variable.isPresent() && !VARIABLE.matcher(variable.get()).matches()) {
            mapping.fault(
                    fromEnvironment, fromEnvironment + " is a name of letters, digits and underscores, not a value");
            return Optional.empty();
        }
        return variable.map(name -> new Given(Optional.empty(), Optional.of(name)));
    }
}
