package org.ebbwatch.handwork;

import io.micronaut.context.ApplicationContext;
import io.micronaut.runtime.server.EmbeddedServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Map;
import org.ebbwatch.access.Sessions;
import org.ebbwatch.access.TokenFile;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.evidence.signature.SigningKey;
import org.ebbwatch.handover.HandOverDesk;
import org.ebbwatch.intake.CardedPassages;

/** A quiet rack with the real server in front of it, and the operator's token. */
public final class Place implements AutoCloseable {
    private final QuietRack rack;
    private final EmbeddedServer server;
    private final String token;

    private Place(QuietRack rack, EmbeddedServer server, String token) {
        this.rack = rack;
        this.server = server;
        this.token = token;
    }

    /** Serves a rack; the rack is closed with it. */
    public static Place of(QuietRack rack, Path records) {
        var tokens = new TokenFile(records);
        try {
            String token = tokens.renew();
            ApplicationContext context = ApplicationContext.builder()
                    .properties(Map.of("micronaut.server.port", -1, "served.rack", "yes"))
                    .singletons(
                            rack,
                            rack.happenings(),
                            rack.links(),
                            rack.intakes(),
                            rack.calibrations(),
                            tokens,
                            new Sessions(tokens),
                            new HandOverDesk(
                                    new CardedPassages(
                                            rack.storage(), rack.intakes().records()),
                                    new BundleWriter(Origin.current(), SigningKey.fresh())),
                            NightHours.usual(ZoneOffset.UTC))
                    .banner(false)
                    .start();
            return new Place(rack, context.getBean(EmbeddedServer.class).start(), token);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public QuietRack rack() {
        return rack;
    }

    public EmbeddedServer server() {
        return server;
    }

    public String token() {
        return token;
    }

    @Override
    public void close() {
        server.getApplicationContext().close();
        rack.close();
    }
}
