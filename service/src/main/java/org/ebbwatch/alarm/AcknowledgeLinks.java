package org.ebbwatch.alarm;

import java.net.URI;
import java.time.Duration;
import java.util.Optional;
import org.ebbwatch.alarm.book.Alarm;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Telling;

/** Makes and reads links by which whoever got a message can say that he knows, without a token of the operator. */
public final class AcknowledgeLinks implements AlarmLinks {
    /** Where they lead to, below the service's address. */
    public static final String PATH = "/alarms/acknowledge/";

    /** How long they last (common practice, no source). */
    public static final Duration LASTING = Duration.ofHours(24);

    private final URI address;
    private final byte[] key;

    /**
     * Links to this service.
     *
     * @param address under which people reach it, without a path
     * @param key by which they are signed; a secret of this service
     */
    public AcknowledgeLinks(URI address, byte[] key) {
        this.address = address;
        this.key = key.clone();
    }

    @Override
    public Optional<String> of(Telling telling) {
        Alarm alarm = telling.alarm();
        if (!alarm.allowed().contains(AlarmStep.ACKNOWLEDGED)) {
            return Optional.empty();
        }
        long until = telling.at().wallMillis() + LASTING.toMillis();
        var token = new AcknowledgeToken(alarm.id(), alarm.steps(), until, telling.outlet());
        return Optional.of(address + PATH + token.text(key));
    }

    Optional<AcknowledgeToken> read(String text) {
        return AcknowledgeToken.read(text, key);
    }
}
