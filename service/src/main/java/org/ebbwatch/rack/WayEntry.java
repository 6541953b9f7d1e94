package org.ebbwatch.rack;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.alarm.outlet.BodyTemplate;
import org.ebbwatch.alarm.outlet.WebhookSettings.Method;

/** One sort of outlet with all it needs. */
public sealed interface WayEntry {

    /**
     * An address to which alarms are sent over HTTP.
     *
     * @param url the address
     * @param headers sent with every message
     * @param body what is sent; empty: the whole message
     * @param signingSecret signs it; empty: it is not signed
     * @param timeout for connecting and for answering each
     * @param certificates whom to believe; empty: as Java comes
     */
    record Webhook(
            Given url,
            Method method,
            List<HeaderEntry> headers,
            Optional<BodyTemplate> body,
            Optional<Given> signingSecret,
            Duration timeout,
            Optional<Path> certificates)
            implements WayEntry {
        public Webhook {
            headers = List.copyOf(headers);
        }
    }

    /** A header and its value. */
    record HeaderEntry(String name, Given value) {}

    /**
     * A mailbox.
     *
     * @param host and {@code port}: of the server that takes the mail
     * @param security of the way there
     * @param login at the server; empty: none
     * @param from the sender's address
     * @param to the one address it goes to
     * @param timeout for each step of talking to the server
     * @param certificates whom to believe; empty: as Java comes
     */
    record Mail(
            String host,
            int port,
            Security security,
            Optional<LoginEntry> login,
            String from,
            String to,
            Duration timeout,
            Optional<Path> certificates)
            implements WayEntry {}

    /**
     * A broker.
     *
     * @param host and {@code port}: of the broker
     * @param security of the way there; never {@link Security#STARTTLS}
     * @param login at the broker; empty: none
     * @param clientId under which it is known there
     * @param prefix of all topics
     * @param sessionExpiry how long the broker keeps what is under way when the connection breaks
     * @param channelPause between two states of a channel
     * @param certificates whom to believe; empty: as Java comes
     */
    record Mqtt(
            String host,
            int port,
            Security security,
            Optional<LoginEntry> login,
            String clientId,
            String prefix,
            Duration sessionExpiry,
            Duration channelPause,
            Optional<Path> certificates)
            implements WayEntry {}

    /**
     * The buzzers of the boards.
     *
     * @param seconds how long they sound for one alarm, 1 to 255
     */
    record BoardBuzzer(int seconds) implements WayEntry {}

    /** Who logs in. */
    record LoginEntry(String user, Given password) {}

    /** How the way to a server is kept from listeners. */
    enum Security {
        /** Begins in the clear and must then be encrypted. */
        STARTTLS,
        TLS,
        NONE
    }
}
