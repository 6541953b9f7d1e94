package org.ebbwatch.alarm.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.alarm.mail.Mails.message;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetupTest;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.alarm.mail.MailSettings.Encryption;
import org.ebbwatch.alarm.mail.MailSettings.Login;
import org.ebbwatch.alarm.outlet.Cable;
import org.ebbwatch.alarm.outlet.Outlet.NotTaken;
import org.ebbwatch.alarm.outlet.Outlet.Taken;
import org.ebbwatch.alarm.outlet.OwnCertificate;
import org.ebbwatch.alarm.outlet.TrustedCertificates;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Mail to a real mail server on this machine. */
class MailOutletTest {
    private static final String PASSWORD = "hush-1234";
    private static final Optional<Login> LOGIN = Optional.of(new Login("ben", PASSWORD));

    private GreenMail server;

    @BeforeEach
    void startServer() {
        server = new GreenMail(ServerSetupTest.SMTP.dynamicPort());
        server.start();
        server.setUser("ben@example.org", "ben", PASSWORD);
    }

    @AfterEach
    void stopServer() {
        server.stop();
    }

    private static MailOutlet outlet(
            int port, Encryption encryption, Optional<Login> login, Optional<TrustedCertificates> trust) {
        return new MailOutlet(
                "mail",
                new MailSettings(
                        "localhost",
                        port,
                        encryption,
                        login,
                        "rack@example.org",
                        "ben@example.org",
                        Duration.ofSeconds(2),
                        trust));
    }

    private MailOutlet inTheClear() {
        return outlet(server.getSmtp().getPort(), Encryption.NONE, Optional.empty(), Optional.empty());
    }

    private static String header(MimeMessage mail, String name) {
        try {
            return mail.getHeader(name, null);
        } catch (MessagingException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void a_mail_is_plain_text_from_the_rack_to_one_person() throws Exception {
        assertThat(inTheClear().deliver(message(1, "RAISED", Map.of("cells", "µ-17"))))
                .isEqualTo(new Taken());

        MimeMessage mail = server.getReceivedMessages()[0];
        assertThat(mail.getSubject()).isEqualTo("HOT µ-17");
        assertThat(mail.getFrom()[0]).hasToString("rack@example.org");
        assertThat(mail.getAllRecipients()).hasSize(1);
        assertThat(mail.getAllRecipients()[0]).hasToString("ben@example.org");
        assertThat(mail.getContentType()).isEqualToIgnoringCase("text/plain; charset=UTF-8");
        assertThat((String) mail.getContent()).startsWith("A cell is hot.\r\n").contains("cell µ-17, board shed");
        assertThat(mail.getSentDate()).isEqualTo("2026-11-25T12:00:00Z");
        assertThat(header(mail, "Auto-Submitted")).isEqualTo("auto-generated");
    }

    @Test
    void a_repetition_has_the_same_id_and_the_steps_of_an_alarm_are_replies_to_its_first() {
        for (String step : List.of("RAISED", "RAISED", "ACKNOWLEDGED")) {
            inTheClear().deliver(message(step.equals("RAISED") ? 1 : 2, step, Map.of()));
        }

        MimeMessage[] mails = server.getReceivedMessages();
        String first = "<" + Mails.ALARM + ".1.raised@example.org>";
        assertThat(mails)
                .extracting(mail -> header(mail, "Message-ID"))
                .containsExactly(first, first, "<" + Mails.ALARM + ".2.acknowledged@example.org>");
        assertThat(mails).extracting(mail -> header(mail, "In-Reply-To")).containsExactly(null, null, first);
        assertThat(mails).extracting(mail -> header(mail, "References")).containsExactly(null, null, first);
    }

    @Test
    void a_server_that_is_away_or_says_nothing_is_tried_again_later() throws IOException {
        try (var silent = new ServerSocket(0, 50, InetAddress.getLoopbackAddress())) {
            assertThat(outlet(silent.getLocalPort(), Encryption.STARTTLS, LOGIN, Optional.empty())
                            .deliver(Mails.raised()))
                    .isInstanceOf(NotTaken.class);
        }
        MailOutlet outlet = inTheClear();
        int port = server.getSmtp().getPort();
        server.stop();
        assertThat(outlet.deliver(Mails.raised())).isEqualTo(new NotTaken("localhost:" + port + " cannot be reached"));
    }

    @Test
    void a_server_that_speaks_tls_from_the_beginning_is_told_when_it_proves_who_it_is(@TempDir Path folder)
            throws Exception {
        var own = OwnCertificate.of("localhost", folder);
        try (var cable = Cable.encrypted("localhost", server.getSmtp().getPort(), own.server())) {
            assertThat(outlet(cable.port(), Encryption.TLS, LOGIN, Optional.empty())
                            .deliver(Mails.raised()))
                    .isInstanceOf(NotTaken.class);
            assertThat(server.getReceivedMessages()).isEmpty();
            assertThat(outlet(cable.port(), Encryption.TLS, LOGIN, Optional.of(TrustedCertificates.read(own.pem())))
                            .deliver(Mails.raised()))
                    .isEqualTo(new Taken());
        }
        assertThat(server.getReceivedMessages()).hasSize(1);
    }

    @Nested
    class With_starttls {
        @TempDir
        Path folder;

        private final List<StartTlsFront> fronts = new ArrayList<>();

        @AfterEach
        void close() throws IOException {
            for (StartTlsFront front : fronts) {
                front.close();
            }
        }

        private StartTlsFront front(Optional<OwnCertificate> shown) throws IOException {
            var front = new StartTlsFront(
                    shown.map(OwnCertificate::server), server.getSmtp().getPort());
            fronts.add(front);
            return front;
        }

        private Optional<TrustedCertificates> trust(OwnCertificate certificate) {
            return Optional.of(TrustedCertificates.read(certificate.pem()));
        }

        @Test
        void nothing_but_the_greeting_is_said_in_the_clear() throws Exception {
            var own = OwnCertificate.of("localhost", folder);
            StartTlsFront front = front(Optional.of(own));

            assertThat(outlet(front.port(), Encryption.STARTTLS, LOGIN, trust(own))
                            .deliver(Mails.raised()))
                    .isEqualTo(new Taken());

            assertThat(server.getReceivedMessages()).hasSize(1);
            assertThat(front.inTheClear()).hasSize(2);
            assertThat(front.inTheClear().get(0)).startsWith("EHLO ");
            assertThat(front.inTheClear().get(1)).isEqualTo("STARTTLS");
        }

        @Test
        void a_server_that_offers_none_gets_neither_mail_nor_password() throws Exception {
            StartTlsFront front = front(Optional.empty());

            assertThat(outlet(front.port(), Encryption.STARTTLS, LOGIN, Optional.empty())
                            .deliver(Mails.raised()))
                    .isEqualTo(new NotTaken(
                            "localhost:" + front.port() + " offers no STARTTLS; nothing was sent in the clear"));
            assertThat(front.inTheClear()).allSatisfy(line -> assertThat(line).matches("EHLO .*|QUIT"));
        }

        @Test
        void a_server_nobody_vouches_for_gets_nothing() throws Exception {
            StartTlsFront front = front(Optional.of(OwnCertificate.of("localhost", folder)));

            assertThat(outlet(front.port(), Encryption.STARTTLS, LOGIN, Optional.empty())
                            .deliver(Mails.raised()))
                    .isEqualTo(new NotTaken("localhost:" + front.port() + " cannot prove who it is, or speaks no TLS"));
            assertThat(server.getReceivedMessages()).isEmpty();
        }

        @Test
        void a_server_with_the_certificate_of_another_host_gets_nothing() throws Exception {
            var other = OwnCertificate.of("elsewhere.example", folder);
            StartTlsFront front = front(Optional.of(other));

            assertThat(outlet(front.port(), Encryption.STARTTLS, LOGIN, trust(other))
                            .deliver(Mails.raised()))
                    .isInstanceOf(NotTaken.class);
            assertThat(server.getReceivedMessages()).isEmpty();
        }

        @Test
        void a_wrong_password_is_told_and_not_shown() throws Exception {
            var own = OwnCertificate.of("localhost", folder);
            StartTlsFront front = front(Optional.of(own));
            var wrong = Optional.of(new Login("ben", "no-" + PASSWORD));

            assertThat(outlet(front.port(), Encryption.STARTTLS, wrong, trust(own))
                            .deliver(Mails.raised()))
                    .isEqualTo(new NotTaken("localhost:" + front.port() + " does not know this user and password"));
            assertThat(wrong.get().toString()).doesNotContain(PASSWORD);
        }
    }
}
