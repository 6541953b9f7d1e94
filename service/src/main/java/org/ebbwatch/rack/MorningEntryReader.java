package org.ebbwatch.rack;

import java.time.LocalTime;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.ebbwatch.alarm.outlet.WebhookSettings;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** Reads what a rack file says of the morning report and of the sign of life. */
final class MorningEntryReader {
    private static final List<String> MORNING_KEYS = List.of("at", "outlets");
    private static final List<String> LIFE_KEYS = List.of("url", "urlEnvironment", "method", "everyMinutes");
    private static final Pattern TIME = Pattern.compile("([01][0-9]|2[0-3]):[0-5][0-9]");
    private static final Pattern VARIABLE = Pattern.compile("[A-Za-z_][A-Za-z0-9_]{0,99}");
    private static final LocalTime USUAL_HOUR = LocalTime.of(7, 0);
    private static final int USUAL_MINUTES = 5;
    private static final int MOST_MINUTES = 1_440;

    private final Faults faults;

    MorningEntryReader(Faults faults) {
        this.faults = faults;
    }

    /**
     * The morning report.
     *
     * @param known names of the outlets there are
     */
    Optional<MorningEntry> morning(Node node, List<String> known) {
        var morning = new YamlMapping(node, "morningReport", MORNING_KEYS, faults);
        LocalTime at = morning.has("at") ? time(morning).orElse(USUAL_HOUR) : USUAL_HOUR;
        Set<String> outlets = new LinkedHashSet<>();
        for (Node each : morning.list("outlets")) {
            if (each instanceof ScalarNode name && known.contains(name.getValue())) {
                outlets.add(name.getValue());
            } else {
                faults.add(
                        Faults.line(each),
                        "outlets names the outlets that carry the report; there "
                                + (known.isEmpty() ? "are none under alarms" : "are " + String.join(", ", known)));
            }
        }
        if (morning.list("outlets").isEmpty() && !morning.isMisspelt("outlets")) {
            morning.fault("outlets", "outlets names at least one outlet that carries the report, such as [webhook]");
        }
        return Optional.of(new MorningEntry(at, outlets));
    }

    private static Optional<LocalTime> time(YamlMapping morning) {
        String allowed = "at is a local time from 00:00 to 23:59, in quotes";
        Optional<String> text = morning.text("at", allowed);
        if (text.isPresent() && !TIME.matcher(text.get()).matches()) {
            morning.fault("at", "at \"" + text.get() + "\" is not allowed; " + allowed);
            return Optional.empty();
        }
        return text.map(LocalTime::parse);
    }

    /** The sign of life. */
    Optional<LifeEntry> life(Node node) {
        var life = new YamlMapping(node, "signOfLife", LIFE_KEYS, faults);
        String allowed = "give url, or with urlEnvironment the name of the environment variable that holds it";
        boolean misspelt = life.isMisspelt("url") || life.isMisspelt("urlEnvironment");
        if (life.has("url") == life.has("urlEnvironment") && !misspelt) {
            faults.add(life.line(), life.has("url") ? allowed + ", not both" : allowed);
        }
        Optional<String> url = life.has("url") ? life.text("url", allowed) : Optional.empty();
        url.ifPresent(address -> {
            try {
                WebhookSettings.checkAddress(address);
            } catch (IllegalArgumentException e) {
                life.fault("url", "url begins with http:// or https:// and a host");
            }
        });
        Optional<String> variable =
                life.has("urlEnvironment") ? life.text("urlEnvironment", allowed) : Optional.empty();
        if (variable.isPresent() && !VARIABLE.matcher(variable.get()).matches()) {
            life.fault("urlEnvironment", "urlEnvironment is a name of letters, digits and underscores, not a value");
        }
        boolean post = life.has("method")
                && life.choice("method", List.of("GET", "POST"))
                        .filter("POST"::equals)
                        .isPresent();
        int minutes = life.has("everyMinutes")
                ? life.whole("everyMinutes", 1, MOST_MINUTES).orElse(USUAL_MINUTES)
                : USUAL_MINUTES;
        return url.isPresent() == variable.isPresent()
                ? Optional.empty()
                : Optional.of(new LifeEntry(url, variable, post, minutes));
    }
}
