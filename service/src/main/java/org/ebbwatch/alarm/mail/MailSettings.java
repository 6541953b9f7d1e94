package org.ebbwatch.alarm.mail;

import java.time.Duration;
import java.util.Optional;
import org.ebbwatch.alarm.outlet.TrustedCertificates;

/**
 * Where mail is handed in and for whom it is. Its text shows no password.
 *
 * @param host and {@code port}: of the server that takes the mail
 * @param login at the server; empty: none
 * @param from the sender's address
 * @param to the one address it goes to
 * @param timeout for each step of talking to the server
 * @param trust whom to believe about who the server is; empty: as Java comes
 */
public record MailSettings(
        String host,
        int port,
        Encryption encryption,
        Optional<Login> login,
        String from,
        String to,
        Duration timeout,
        Optional<TrustedCertificates> trust) {

    /** How the way to the server is kept from listeners. */
    public enum Encryption {
        /** Begins in the clear; nothing is sent before it is encrypted. */
        STARTTLS,
        TLS,
        NONE
    }

    /** Who logs in. */
    public record Login(String user, String password) {
        @Override
        public String toString() {
            return "login of " + user;
        }
    }

    /** Host and port. */
    String place() {
        return host + ':' + port;
    }
}
