package org.ebbwatch.alarm.mail;

import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
import jakarta.mail.SendFailedException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Date;
import java.util.Properties;
import java.util.Set;
import org.ebbwatch.alarm.outlet.MessageField;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.OutletMessage;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.util.MailConnectException;

/**
 * Sends each message as a mail in plain text to one address. Its Message-ID is the same at every attempt, and the steps of one
 * alarm are replies to its first, so that a mail program shows them together and knows a repetition.
 *
 * <p>With {@link MailSettings.Encryption#STARTTLS} nothing but the greeting is said before the way is encrypted. The server has to
 * prove that it is the host it was asked for.
 */
public final class MailOutlet implements Outlet {
    /** Answers by which a server says that it does not want this very mail (RFC 5321, section 4.2.3). */
    private static final Set<Integer> UNWANTED = Set.of(552, 554);

    private final String name;
    private final MailSettings settings;
    private final Session session;

    /**
     * A way to a mailbox.
     *
     * @param name under which its messages are kept
     */
    public MailOutlet(String name, MailSettings settings) {
        this.name = name;
        this.settings = settings;
        this.session = Session.getInstance(properties(settings));
    }

    private static Properties properties(MailSettings settings) {
        var properties = new Properties();
        String millis = Long.toString(settings.timeout().toMillis());
        properties.put("mail.smtp.connectiontimeout", millis);
        properties.put("mail.smtp.timeout", millis);
        properties.put("mail.smtp.writetimeout", millis);
        properties.put("mail.smtp.auth", Boolean.toString(settings.login().isPresent()));
        properties.put("mail.smtp.ssl.checkserveridentity", "true");
        switch (settings.encryption()) {
            case STARTTLS -> {
                properties.put("mail.smtp.starttls.enable", "true");
                properties.put("mail.smtp.starttls.required", "true");
            }
            case TLS -> properties.put("mail.smtp.ssl.enable", "true");
            case NONE -> properties.put("mail.smtp.starttls.enable", "false");
        }
        settings.trust()
                .ifPresent(trust -> properties.put(
                        "mail.smtp.ssl.socketFactory", trust.context().getSocketFactory()));
        return properties;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Delivery deliver(OutletMessage message) {
        try (Transport transport = session.getTransport("smtp")) {
            transport.connect(
                    settings.host(),
                    settings.port(),
                    settings.login().map(MailSettings.Login::user).orElse(null),
                    settings.login().map(MailSettings.Login::password).orElse(null));
            MimeMessage mail = mail(message);
            transport.sendMessage(mail, mail.getAllRecipients());
            return new Taken();
        } catch (MessagingException e) {
            return failed(e);
        }
    }

    private MimeMessage mail(OutletMessage message) throws MessagingException {
        var text = new MailText(message);
        String domain = settings.from().substring(settings.from().lastIndexOf('@') + 1);
        var mail = new IdentifiedMail(session, text.id(domain));
        mail.setFrom(new InternetAddress(settings.from()));
        mail.setRecipient(RecipientType.TO, new InternetAddress(settings.to()));
        mail.setSubject(text.subject(), StandardCharsets.UTF_8.name());
        mail.setSentDate(Date.from(Instant.parse(message.field(MessageField.AT))));
        mail.setText(text.body(), StandardCharsets.UTF_8.name());
        if (!text.id(domain).equals(text.firstId(domain))) {
            mail.setHeader("In-Reply-To", '<' + text.firstId(domain) + '>');
            mail.setHeader("References", '<' + text.firstId(domain) + '>');
        }
        // So that no absence notice answers it (RFC 3834).
        mail.setHeader("Auto-Submitted", "auto-generated");
        mail.saveChanges();
        return mail;
    }

    private Delivery failed(MessagingException e) {
        String place = settings.place();
        if (e instanceof MailConnectException) {
            return new NotTaken(place + " cannot be reached");
        }
        if (e instanceof AuthenticationFailedException) {
            return new NotTaken(place + " does not know this user and password");
        }
        if (e instanceof SMTPSendFailedException refused) {
            String told = place + " answered " + refused.getReturnCode();
            return UNWANTED.contains(refused.getReturnCode()) ? new Unwanted(told) : new NotTaken(told);
        }
        if (e instanceof SendFailedException) {
            return new NotTaken(place + " does not take mail for this address");
        }
        return new NotTaken(place + ' ' + why(e));
    }

    private static String why(MessagingException failure) {
        String words = String.valueOf(failure.getMessage());
        if (words.contains("STARTTLS is required")) {
            return "offers no STARTTLS; nothing was sent in the clear";
        }
        if (words.contains("TLS")) {
            return "cannot prove who it is, or speaks no TLS";
        }
        return failure.getCause() instanceof IOException
                ? "broke off or did not answer in time"
                : "cannot be talked to (" + failure.getClass().getSimpleName() + ')';
    }

    /** A mail whose Message-ID is given, not made. */
    private static final class IdentifiedMail extends MimeMessage {
        private final String id;

        IdentifiedMail(Session session, String id) {
            super(session);
            this.id = id;
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            setHeader("Message-ID", '<' + id + '>');
        }
    }
}
