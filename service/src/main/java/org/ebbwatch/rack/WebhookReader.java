package org.ebbwatch.rack;

import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ebbwatch.alarm.outlet.BodyTemplate;
import org.ebbwatch.alarm.outlet.BodyTemplate.ContentType;
import org.ebbwatch.alarm.outlet.MessageField;
import org.ebbwatch.alarm.outlet.WebhookSettings;
import org.ebbwatch.alarm.outlet.WebhookSettings.Method;
import org.ebbwatch.rack.WayEntry.HeaderEntry;
import org.ebbwatch.rack.WayEntry.Webhook;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads what a rack file says of a webhook. */
final class WebhookReader {
    private static final List<String> WEBHOOK_KEYS = WayReader.joined(
            WayReader.joined(GivenReader.keys("url"), GivenReader.keys("signingSecret")),
            List.of("method", "headers", "body", "bodyType", "timeoutSeconds", "certificates"));
    private static final List<String> HEADER_KEYS = WayReader.joined(List.of("name"), GivenReader.keys("value"));
    private static final List<String> METHODS = List.of("POST", "PUT");
    private static final List<String> TYPES = List.of(ContentType.JSON.key(), ContentType.TEXT.key());
    private static final Pattern SECRET_HEADER =
            Pattern.compile("(?i)authorization|proxy-authorization|cookie|.*(token|secret|password|api-?key).*");

    private final Faults faults;
    private final Path folder;
    private final GivenReader givens;

    WebhookReader(Faults faults, Path folder, GivenReader givens) {
        this.faults = faults;
        this.folder = folder;
        this.givens = givens;
    }

    Optional<Webhook> read(Node node) {
        var webhook = new YamlMapping(node, "webhook", WEBHOOK_KEYS, faults);
        Optional<Given> url = givens.text(webhook, "url");
        if (url.isPresent() && url.get() instanceof Given.Text given) {
            check(webhook, "url", () -> WebhookSettings.checkAddress(given.text()));
        }
        Method method = webhook.has("method")
                ? webhook.choice("method", METHODS).map(Method::valueOf).orElse(Method.POST)
                : Method.POST;
        List<HeaderEntry> headers = new ArrayList<>();
        webhook.list("headers").forEach(each -> header(each).ifPresent(headers::add));
        Optional<BodyTemplate> body = webhook.has("body") ? body(webhook) : Optional.empty();
        if (webhook.has("bodyType") && !webhook.has("body")) {
            webhook.fault("bodyType", "bodyType says what body is; without body the message is sent as JSON");
        }
        Optional<Given> secret =
                GivenReader.has(webhook, "signingSecret") ? givens.secret(webhook, "signingSecret") : Optional.empty();
        var timeout = Duration.ofSeconds(
                WayReader.number(webhook, "timeoutSeconds", 1, (int) WebhookSettings.LONGEST_PATIENCE.toSeconds(), (int)
                        WebhookSettings.USUAL_PATIENCE.toSeconds()));
        Optional<Path> certificates = WayReader.certificates(webhook, folder);
        return url.map(it -> new Webhook(it, method, headers, body, secret, timeout, certificates));
    }

    private Optional<HeaderEntry> header(Node node) {
        var header = new YamlMapping(node, "a header", HEADER_KEYS, faults);
        Optional<String> name = header.text("name", "name is that of an HTTP header");
        name.ifPresent(it -> check(header, "name", () -> WebhookSettings.checkName(it)));
        boolean secret = name.filter(it -> SECRET_HEADER.matcher(it).matches()).isPresent();
        Optional<Given> value = secret ? givens.secret(header, "value") : givens.text(header, "value");
        return name.flatMap(it -> value.map(given -> new HeaderEntry(it, given)));
    }

    private static Optional<BodyTemplate> body(YamlMapping webhook) {
        ContentType type = webhook.has("bodyType")
                        && webhook.choice("bodyType", TYPES)
                                .filter(ContentType.TEXT.key()::equals)
                                .isPresent()
                ? ContentType.TEXT
                : ContentType.JSON;
        Optional<String> text = webhook.text("body", "body is a text with fields such as ${what}");
        try {
            Optional<BodyTemplate> template = text.map(it -> new BodyTemplate(it, type));
            if (template.isPresent() && type == ContentType.JSON && !isJson(template.get())) {
                webhook.fault("body", "body is no JSON when its fields are filled in; bodyType may be " + TYPES.get(1));
            }
            return template;
        } catch (IllegalArgumentException e) {
            webhook.fault("body", e.getMessage());
            return Optional.empty();
        }
    }

    /** Fields are tried as numbers, which may stand in quotes or without. */
    private static boolean isJson(BodyTemplate template) {
        Map<String, String> numbers = new HashMap<>();
        MessageField.keys().forEach(key -> numbers.put(key, "1"));
        try {
            return JsonMapper.createDefault().readValue(template.filled(numbers), JsonNode.class) != null;
        } catch (IOException e) {
            return false;
        }
    }

    private static void check(YamlMapping mapping, String key, Runnable check) {
        try {
            check.run();
        } catch (IllegalArgumentException e) {
            mapping.fault(key, e.getMessage());
        }
    }
}
