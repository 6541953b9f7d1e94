package org.ebbwatch.alarm.outlet;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** Where a webhook's messages go and with which headers. Address and headers may be secret: its text shows neither. */
public final class WebhookSettings {
    private static final Pattern HEADER_NAME = Pattern.compile("[!#$%&'*+.^_`|~0-9A-Za-z-]{1,80}");
    private static final Pattern HEADER_VALUE = Pattern.compile("[\\x20-\\x7e]{1,4000}");
    private static final Set<String> OWN_HEADERS = Set.of(
            "connection",
            "content-length",
            "content-type",
            "expect",
            "host",
            "idempotency-key",
            "upgrade",
            "user-agent");

    private final URI address;
    private final Map<String, String> headers = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);

    /**
     * Takes address and headers.
     *
     * @throws IllegalArgumentException if either cannot be used; the message shows no secret
     */
    public WebhookSettings(String address, Map<String, String> headers) {
        this.address = parse(address);
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

    /** Host and port: all of the address that is shown. */
    String place() {
        return address.getPort() < 0 ? address.getHost() : address.getHost() + ':' + address.getPort();
    }

    @Override
    public String toString() {
        return "webhook at " + place();
    }
}
