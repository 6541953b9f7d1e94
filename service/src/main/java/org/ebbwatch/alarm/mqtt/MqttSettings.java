package org.ebbwatch.alarm.mqtt;

import java.time.Duration;
import java.util.Optional;
import org.ebbwatch.alarm.outlet.TrustedCertificates;

/**
 * Which broker, and what is published there. Its text shows no password.
 *
 * @param host and {@code port}: of the broker
 * @param encrypted whether the way there is; then the broker has to prove who it is
 * @param trust whom to believe about that; empty: as Java comes
 * @param login at the broker; empty: none
 * @param clientId under which it is known there; another one for each service
 * @param prefix of all topics, without a slash at its end
 * @param sessionExpiry how long the broker keeps what is under way when the connection breaks, at most a week
 * @param patience how long a broker may take to say that it has a message
 */
public record MqttSettings(
        String host,
        int port,
        boolean encrypted,
        Optional<TrustedCertificates> trust,
        Optional<Login> login,
        String clientId,
        String prefix,
        Duration sessionExpiry,
        Duration patience) {

    /** Usual patience. */
    public static final Duration USUAL_PATIENCE = Duration.ofSeconds(20);

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

    /** Whether the service is there: {@code true} or {@code false}, retained. */
    String onlineTopic() {
        return prefix + "/online";
    }

    /** The messages of alarms. */
    String alarmTopic() {
        return prefix + "/alarms";
    }

    /** The state of a channel, retained. */
    String channelTopic(String board, int channel) {
        return prefix + "/channels/" + board + '/' + channel;
    }
}
