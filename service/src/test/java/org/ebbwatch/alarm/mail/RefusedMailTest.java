package org.ebbwatch.alarm.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.alarm.mail.MailSettings.Encryption;
import org.ebbwatch.alarm.outlet.Outlet.Delivery;
import org.ebbwatch.alarm.outlet.Outlet.NotTaken;
import org.ebbwatch.alarm.outlet.Outlet.Unwanted;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A mail server that says no; the answers are those of RFC 5321, section 4.2.3. */
class RefusedMailTest {

    /** Answers one conversation, verb by verb; what is not named is agreed to. */
    private static Delivery deliver(Map<String, String> answers) throws IOException {
        try (var listening = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            var thread = new Thread(() -> converse(listening, answers), "refusing mail server");
            thread.setDaemon(true);
            thread.start();
            return new MailOutlet(
                            "mail",
                            new MailSettings(
                                    "localhost",
                                    listening.getLocalPort(),
                                    Encryption.NONE,
                                    Optional.empty(),
                                    "rack@example.org",
                                    "ben@example.org",
                                    Duration.ofSeconds(5),
                                    Optional.empty()))
                    .deliver(Mails.raised());
        }
    }

    private static void converse(ServerSocket listening, Map<String, String> answers) {
        try (Socket client = listening.accept()) {
            var lines = new BufferedReader(new InputStreamReader(client.getInputStream(), StandardCharsets.US_ASCII));
            say(client, "220 ready");
            boolean text = false;
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String verb = text ? line : line.replaceFirst("[ :].*", "");
                if (text && !line.equals(".")) {
                    continue;
                }
                text = verb.equals("DATA") && !answers.containsKey(verb);
                say(client, answers.getOrDefault(verb, text ? "354 go on" : "250 well"));
            }
        } catch (IOException over) {
            // The client went.
        }
    }

    private static void say(Socket client, String text) throws IOException {
        client.getOutputStream().write((text + "\r\n").getBytes(StandardCharsets.US_ASCII));
    }

    @ParameterizedTest
    @ValueSource(ints = {552, 554})
    void a_mail_that_is_not_wanted_for_what_it_holds_steps_aside(int answer) throws IOException {
        assertThat(deliver(Map.of(".", answer + " no")))
                .isInstanceOfSatisfying(
                        Unwanted.class, unwanted -> assertThat(unwanted.why()).endsWith(" answered " + answer));
    }

    @ParameterizedTest
    @ValueSource(ints = {421, 451, 452, 550})
    void a_server_that_cannot_take_it_now_is_tried_again(int answer) throws IOException {
        assertThat(deliver(Map.of(".", answer + " no"))).isInstanceOf(NotTaken.class);
    }

    @Test
    void a_server_that_does_not_know_the_address_is_tried_again() throws IOException {
        assertThat(deliver(Map.of("RCPT", "550 nobody here"))).isInstanceOf(NotTaken.class);
        assertThat(deliver(Map.of("MAIL", "550 not from you"))).isInstanceOf(NotTaken.class);
    }
}
