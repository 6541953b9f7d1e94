package org.ebbwatch.rack;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ebbwatch.rack.WayEntry.BoardBuzzer;
import org.ebbwatch.rack.WayEntry.LoginEntry;
import org.ebbwatch.rack.WayEntry.Mail;
import org.ebbwatch.rack.WayEntry.Mqtt;
import org.ebbwatch.rack.WayEntry.Security;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads what each sort of outlet needs. */
final class WayReader {
    /** The sorts of outlets. */
    static final List<String> KINDS = List.of("webhook", "mail", "mqtt", "buzzer");

    private static final List<String> SERVER_KEYS =
            joined(List.of("host", "port", "security", "certificates", "user"), GivenReader.keys("password"));
    private static final List<String> MAIL_KEYS = joined(SERVER_KEYS, List.of("from", "to", "timeoutSeconds"));
    private static final List<String> MQTT_KEYS =
            joined(SERVER_KEYS, List.of("clientId", "prefix", "sessionMinutes", "channelSeconds"));
    private static final Pattern HOST =
            Pattern.compile("[A-Za-z0-9]([A-Za-z0-9.-]{0,250}[A-Za-z0-9])?|\\[?[0-9A-Fa-f:.]+]?");
    private static final Pattern MAILBOX = Pattern.compile("[!-?A-~]+@[A-Za-z0-9.\\[\\]:-]+");
    private static final Pattern CLIENT_ID = Pattern.compile("[A-Za-z0-9._-]{1,64}");
    private static final Pattern TOPIC = Pattern.compile("[A-Za-z0-9._-]+(/[A-Za-z0-9._-]+)*");

    private static final int HIGHEST_PORT = 65_535;
    private static final int SUBMISSION_PORT = 587;
    private static final int SUBMISSION_TLS_PORT = 465;
    private static final int MQTT_PORT = 1_883;
    private static final int MQTT_TLS_PORT = 8_883;
    private static final int MAIL_TIMEOUT_SECONDS = 20;
    private static final int SESSION_MINUTES = 60;
    private static final int CHANNEL_SECONDS = 10;
    private static final int BUZZER_SECONDS = 60;

    private final Faults faults;
    private final Path folder;
    private final GivenReader givens;

    WayReader(Faults faults, Path folder) {
        this.faults = faults;
        this.folder = folder;
        this.givens = new GivenReader(faults, folder);
    }

    static List<String> joined(List<String> some, List<String> more) {
        return Stream.concat(some.stream(), more.stream()).toList();
    }

    /** Reads an outlet of one of the {@link #KINDS}. */
    Optional<WayEntry> read(String kind, Node node) {
        return switch (kind) {
            case "webhook" ->
                new WebhookReader(faults, folder, givens).read(node).map(WayEntry.class::cast);
            case "mail" -> mail(new YamlMapping(node, "mail", MAIL_KEYS, faults));
            case "mqtt" -> mqtt(new YamlMapping(node, "mqtt", MQTT_KEYS, faults));
            default -> buzzer(new YamlMapping(node, "buzzer", List.of("seconds"), faults));
        };
    }

    private Optional<WayEntry> mail(YamlMapping mail) {
        Optional<String> host = matching(mail, "host", HOST, "host is the name or address of the mail server");
        Security security = security(mail, Security.STARTTLS, List.of(Security.values()));
        int port =
                number(mail, "port", 1, HIGHEST_PORT, security == Security.TLS ? SUBMISSION_TLS_PORT : SUBMISSION_PORT);
        Optional<LoginEntry> login = login(mail);
        Optional<String> from =
                matching(mail, "from", MAILBOX, "from is the sender's address, such as rack@example.org");
        Optional<String> to = matching(
                mail, "to", MAILBOX, "to is one address, such as anna@example.org; give one outlet for each person");
        var timeout = Duration.ofSeconds(number(mail, "timeoutSeconds", 1, 60, MAIL_TIMEOUT_SECONDS));
        Optional<Path> certificates = certificates(mail, folder);
        return host.isEmpty() || from.isEmpty() || to.isEmpty()
                ? Optional.empty()
                : Optional.of(new Mail(host.get(), port, security, login, from.get(), to.get(), timeout, certificates));
    }

    private Optional<WayEntry> mqtt(YamlMapping mqtt) {
        Optional<String> host = matching(mqtt, "host", HOST, "host is the name or address of the broker");
        Security security = security(mqtt, Security.TLS, List.of(Security.TLS, Security.NONE));
        int port = number(mqtt, "port", 1, HIGHEST_PORT, security == Security.TLS ? MQTT_TLS_PORT : MQTT_PORT);
        Optional<LoginEntry> login = login(mqtt);
        Optional<String> clientId = mqtt.has("clientId")
                ? matching(
                        mqtt, "clientId", CLIENT_ID, "clientId is 1 to 64 letters, digits, points, dashes, underscores")
                : Optional.of("ebbwatch");
        Optional<String> prefix = mqtt.has("prefix")
                ? matching(mqtt, "prefix", TOPIC, "prefix is a topic without + and #, such as shed/ebbwatch")
                : Optional.of("ebbwatch");
        var session = Duration.ofMinutes(number(mqtt, "sessionMinutes", 0, 10_080, SESSION_MINUTES));
        var pause = Duration.ofSeconds(number(mqtt, "channelSeconds", 1, 3_600, CHANNEL_SECONDS));
        Optional<Path> certificates = certificates(mqtt, folder);
        return host.isEmpty() || clientId.isEmpty() || prefix.isEmpty()
                ? Optional.empty()
                : Optional.of(new Mqtt(
                        host.get(), port, security, login, clientId.get(), prefix.get(), session, pause, certificates));
    }

    private static Optional<WayEntry> buzzer(YamlMapping buzzer) {
        return Optional.of(new BoardBuzzer(number(buzzer, "seconds", 1, 255, BUZZER_SECONDS)));
    }

    private Optional<LoginEntry> login(YamlMapping server) {
        if (!server.has("user") && !GivenReader.has(server, "password")) {
            return Optional.empty();
        }
        Optional<String> user = server.text("user", "user and password are given together");
        Optional<Given> password = givens.secret(server, "password");
        return user.flatMap(name -> password.map(given -> new LoginEntry(name, given)));
    }

    private static Security security(YamlMapping server, Security usual, List<Security> allowed) {
        List<String> words = allowed.stream().map(WayReader::word).toList();
        return server.has("security")
                ? server.choice("security", words)
                        .flatMap(word -> Arrays.stream(Security.values())
                                .filter(it -> word(it).equals(word))
                                .findFirst())
                        .orElse(usual)
                : usual;
    }

    private static String word(Security security) {
        return security.name().toLowerCase(Locale.ROOT);
    }

    /** The file with the certificates to believe. */
    static Optional<Path> certificates(YamlMapping mapping, Path folder) {
        return mapping.has("certificates")
                ? mapping.text("certificates", "certificates is a PEM file").map(folder::resolve)
                : Optional.empty();
    }

    /** A whole number, or the usual one where none is given. */
    static int number(YamlMapping mapping, String key, int least, int most, int usual) {
        OptionalInt given = mapping.has(key) ? mapping.whole(key, least, most) : OptionalInt.empty();
        return given.orElse(usual);
    }

    private static Optional<String> matching(YamlMapping mapping, String key, Pattern pattern, String allowed) {
        Optional<String> text = mapping.text(key, allowed);
        if (text.isPresent() && !pattern.matcher(text.get()).matches()) {
            mapping.fault(key, key + " \"" + text.get() + "\" is not allowed; " + allowed);
            return Optional.empty();
        }
        return text;
    }
}
