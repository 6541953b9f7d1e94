package org.ebbwatch.cli;

import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.WebhookOutlet;
import org.ebbwatch.alarm.outlet.WebhookSettings;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.rack.AlarmEntry;
import org.ebbwatch.rack.WebhookEntry;
import org.ebbwatch.rack.WebhookEntry.Given;
import org.ebbwatch.rack.WebhookEntry.HeaderEntry;

/** Makes of what a rack file says of alarms the ways they leave. Secrets are taken from the environment and shown nowhere. */
final class AlarmWays {
    private AlarmWays() {}

    static NightHours night(AlarmEntry alarms) {
        return new NightHours(alarms.nightFrom(), alarms.nightTo(), ZoneId.systemDefault());
    }

    /**
     * The outlets.
     *
     * @throws Refusal if the environment lacks something, or holds something that cannot be used
     */
    static List<Outlet> outlets(AlarmEntry alarms, Map<String, String> environment) throws Refusal {
        return alarms.webhook().isPresent() ? List.of(webhook(alarms.webhook().get(), environment)) : List.of();
    }

    private static Outlet webhook(WebhookEntry entry, Map<String, String> environment) throws Refusal {
        Map<String, String> headers = new LinkedHashMap<>();
        for (HeaderEntry header : entry.headers()) {
            headers.put(header.name(), value(header.value(), environment));
        }
        try {
            return new WebhookOutlet(new WebhookSettings(value(entry.url(), environment), headers));
        } catch (IllegalArgumentException e) {
            throw new Refusal("the webhook of the rack file cannot be used: " + e.getMessage());
        }
    }

    private static String value(Given given, Map<String, String> environment) throws Refusal {
        if (given.text().isPresent()) {
            return given.text().get();
        }
        String variable = given.environment().orElseThrow();
        String value = environment.getOrDefault(variable, "");
        if (value.isBlank()) {
            throw new Refusal("the environment holds no " + variable + ", which the webhook of the rack file needs");
        }
        return value;
    }
}
