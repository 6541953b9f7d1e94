package org.ebbwatch.alarm.outlet;

import java.net.URI;
import java.net.URISyntaxException;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * Where a webhook's messages go, how, and with which headers. Address, headers and signature may be secret: its text shows none.
 */
public final class WebhookSettings {
    /** How long an answer may take unless told otherwise, and at most. */
    public static final Duration USUAL_PATIENCE = Duration.ofSeconds(20);

    public static final Duration LONGEST_PATIENCE = Duration.ofSeconds(60);

    private static final Pattern HEADER_NAME = Pattern.compile("[!#$%&'*+.^_`|~0-9A-Za-z-]{1,80}");
    private static final Pattern HEADER_VALUE = Pattern.compile("[\\x20-\\x7e]{1,4000}");
    private static final Set<String> OWN_HEADERS = Set.of(
            "connection",
            "content-length",
            "content-type",
            "ebbwatch-signature",
            "ebbwatch-signed-at",
            "expect",
            "host",
            "idempotency-key",
            "upgrade",
            "user-agent");

    private final URI address;
    private final Map<String, String> headers = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
    private final Manner manner;

    /** With which verb messages are sent. */
    public enum Method {
        POST,
        PUT
    }

    /**
     * How messages are sent.
     *
     * @param body what is sent; empty: the whole message as JSON
     * @param signature signs it; empty: it is not signed
     * @param patience how long connecting and answering may take each, at most a minute
     * @param trust whom to believe about who the server is; empty: as Java comes
     */
    public record Manner(
            Method method,
            Optional<BodyTemplate> body,
            Optional<BodySignature> signature,
            Duration patience,
            Optional<TrustedCertificates> trust) {
        /** The whole message is posted, unsigned. */
        public static final Manner USUAL =
                new Manner(Method.POST, Optional.empty(), Optional.empty(), USUAL_PATIENCE, Optional.empty());

        public Manner {
            if (patience.isNegative() || patience.isZero() || patience.compareTo(LONGEST_PATIENCE) > 0) {
                throw new IllegalArgumentException("patience is above 0 and at most " + LONGEST_PATIENCE);
            }
        }
    }

    /** As {@link Manner#USUAL} has it. */
    public WebhookSettings(String address, Map<String, String> headers) {
        this(address, headers, Manner.USUAL);
    }

    /**
     * Takes address, headers and manner.
     *
     * @throws IllegalArgumentException if address or headers cannot be used; the message shows no secret
     */
    public WebhookSettings(String address, Map<String, String> headers, Manner manner) {
        this.address = parse(address);
        this.manner = manner;
        headers.forEach((name, value) -> {
            checkName(name);
            if (!HEADER_VALUE.matcher(value).matches()) {
                throw new IllegalArgumentException(
                        "the value of header " + name + " is 1 to 4000 printable characters of ASCII");
            }
            this.headers.put(name, value);
        });
    }

    /**
     * Says whether an address can be used.
     *
     * @throws IllegalArgumentException if not; the message does not show it
     */
    public static void checkAddress(String address) {
        parse(address);
    }

    private static URI parse(String address) {
        try {
            URI parsed = new URI(address);
            if (parsed.getHost() != null && Set.of("http", "https").contains(String.valueOf(parsed.getScheme()))) {
                return parsed;
            }
        } catch (URISyntaxException notAnAddress) {
            // Its message repeats the address, which may be secret.
        }
        throw new IllegalArgumentException("the address of a webhook begins with http:// or https:// and a host");
    }

    /**
     * Says whether a header may be set.
     *
     * @throws IllegalArgumentException if not, and why
     */
    public static void checkName(String name) {
        if (!HEADER_NAME.matcher(name).matches()) {
            throw new IllegalArgumentException(
                    "the name of a header is 1 to 80 letters, digits and dashes, not \"" + name + '"');
        }
        if (OWN_HEADERS.contains(name.toLowerCase(Locale.ROOT))) {
            throw new IllegalArgumentException("header " + name + " is set by the service itself");
        }
    }

    URI address() {
        return address;
    }

    Map<String, String> headers() {
        return headers;
    }

    Manner manner() {
        return manner;
    }

    /** Host and port: all of the address that is shown. */
    String place() {
        return address.getPort() < 0 ? address.getHost() : address.getHost() + ':' + address.getPort();
    }

    @Override
    public String toString() {
        return "webhook at " + place();
    }
}
