package org.ebbwatch.cli;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.alarm.AlarmWay;
import org.ebbwatch.alarm.book.LocalHours;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.mail.MailOutlet;
import org.ebbwatch.alarm.mail.MailSettings;
import org.ebbwatch.alarm.mail.MailSettings.Encryption;
import org.ebbwatch.alarm.mqtt.MqttBroker;
import org.ebbwatch.alarm.mqtt.MqttSettings;
import org.ebbwatch.alarm.outlet.BodySignature;
import org.ebbwatch.alarm.outlet.BuzzerOutlet;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.TrustedCertificates;
import org.ebbwatch.alarm.outlet.WebhookOutlet;
import org.ebbwatch.alarm.outlet.WebhookSettings;
import org.ebbwatch.alarm.outlet.WebhookSettings.Manner;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.rack.AlarmEntry;
import org.ebbwatch.rack.OutletEntry;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.WayEntry;
import org.ebbwatch.rack.WayEntry.HeaderEntry;

/**
 * Makes of what a rack file says of alarms the ways they leave. Secrets are taken from the environment or from files of their own
 * and shown nowhere.
 */
final class AlarmWays implements AutoCloseable {
    private final GivenTexts given;
    private final HostClock clock;
    private final Map<MqttBroker, Duration> brokers = new LinkedHashMap<>();
    private volatile RunningRack rack;

    /** Secrets come from there; what is signed is signed with that time. */
    AlarmWays(Map<String, String> environment, HostClock clock) {
        this.given = new GivenTexts(environment);
        this.clock = clock;
    }

    static NightHours night(AlarmEntry alarms) {
        return new NightHours(alarms.nightFrom(), alarms.nightTo(), ZoneId.systemDefault());
    }

    /**
     * The outlets, and of what each is told.
     *
     * @throws Refusal if a secret is missing, or something cannot be used
     */
    List<AlarmWay> of(AlarmEntry alarms) throws Refusal {
        List<AlarmWay> ways = new ArrayList<>();
        for (OutletEntry entry : alarms.outlets()) {
            try {
                ways.add(new AlarmWay(outlet(entry.name(), entry.way()), route(entry)));
            } catch (IllegalArgumentException e) {
                throw new Refusal("the outlet " + entry.name() + " of the rack file cannot be used: " + e.getMessage());
            }
        }
        return ways;
    }

    private static Route route(OutletEntry entry) {
        return new Route(
                entry.from(),
                entry.hours().map(hours -> new LocalHours(hours.from(), hours.to(), ZoneId.systemDefault())),
                entry.escalateAfterMinutes().isPresent()
                        ? Optional.of(
                                Duration.ofMinutes(entry.escalateAfterMinutes().getAsInt()))
                        : Optional.empty());
    }

    private Outlet outlet(String name, WayEntry way) {
        if (way instanceof WayEntry.Webhook webhook) {
            return webhook(name, webhook);
        }
        if (way instanceof WayEntry.Mail mail) {
            return mail(name, mail);
        }
        if (way instanceof WayEntry.Mqtt mqtt) {
            return mqtt(name, mqtt);
        }
        return new BuzzerOutlet(name, ((WayEntry.BoardBuzzer) way).seconds(), this::buzz);
    }

    private Outlet webhook(String name, WayEntry.Webhook entry) {
        Map<String, String> headers = new LinkedHashMap<>();
        for (HeaderEntry header : entry.headers()) {
            headers.put(header.name(), given.text(header.value()));
        }
        var manner = new Manner(
                entry.method(),
                entry.body(),
                entry.signingSecret().map(given::text).map(BodySignature::new),
                entry.timeout(),
                entry.certificates().map(TrustedCertificates::read));
        return new WebhookOutlet(name, new WebhookSettings(given.text(entry.url()), headers, manner), clock);
    }

    private Outlet mail(String name, WayEntry.Mail entry) {
        return new MailOutlet(
                name,
                new MailSettings(
                        entry.host(),
                        entry.port(),
                        Encryption.valueOf(entry.security().name()),
                        entry.login().map(login -> new MailSettings.Login(login.user(), given.text(login.password()))),
                        entry.from(),
                        entry.to(),
                        entry.timeout(),
                        entry.certificates().map(TrustedCertificates::read)));
    }

    private Outlet mqtt(String name, WayEntry.Mqtt entry) {
        var broker = new MqttBroker(new MqttSettings(
                entry.host(),
                entry.port(),
                entry.security() == WayEntry.Security.TLS,
                entry.certificates().map(TrustedCertificates::read),
                entry.login().map(login -> new MqttSettings.Login(login.user(), given.text(login.password()))),
                entry.clientId(),
                entry.prefix(),
                entry.sessionExpiry(),
                MqttSettings.USUAL_PATIENCE));
        brokers.put(broker, entry.channelPause());
        return broker.outlet(name);
    }

    private boolean buzz(int seconds) {
        RunningRack running = rack;
        return running != null && running.buzz(seconds);
    }

    /** The rack is at work: its boards may be sounded, its channels told of. Once. */
    void begin(RunningRack running) {
        rack = running;
        brokers.forEach((broker, pause) -> broker.start(running, pause));
    }

    /** The rack is no longer at work. */
    @Override
    public void close() {
        brokers.keySet().forEach(MqttBroker::close);
    }
}
