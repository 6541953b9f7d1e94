package org.ebbwatch.cli;

import com.github.f4b6a3.uuid.UuidCreator;
import io.micronaut.context.ApplicationContext;
import io.micronaut.runtime.server.EmbeddedServer;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.access.LinkKey;
import org.ebbwatch.access.Sessions;
import org.ebbwatch.access.TokenFile;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.AcknowledgeLinks;
import org.ebbwatch.alarm.AlarmWay;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.archive.Backups;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.evidence.signature.SigningKey;
import org.ebbwatch.handover.HandOverDesk;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.HttpEntry;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;

/** Puts a running rack, its storage and its page together. */
final class ServiceHost {
    private ServiceHost() {}

    /**
     * A rack with its records at that place, not yet started. With a public address messages carry links.
     *
     * @throws Refusal if the records cannot be opened
     */
    static RunningRack rack(
            List<BoardPort> boards,
            RecordPlace place,
            NightHours night,
            List<AlarmWay> ways,
            Optional<URI> publicAddress)
            throws Refusal {
        StoredRack records = place.open();
        Optional<AcknowledgeLinks> links = publicAddress.isPresent()
                ? Optional.of(new AcknowledgeLinks(publicAddress.get(), linkKey(place.folder())))
                : Optional.empty();
        return new RunningRack(
                boards, records, night, ways, links, UuidCreator::getTimeOrderedEpoch, new SystemHostClock());
    }

    private static byte[] linkKey(Path storage) throws Refusal {
        try {
            return LinkKey.of(storage);
        } catch (IOException e) {
            throw new Refusal("links cannot be signed: " + e.getMessage());
        }
    }

    /**
     * The page and the interface of a rack, being served.
     *
     * @param tokens who may act on it
     * @param night when nobody is asked to come for what can wait
     * @param storage the folder of the records
     * @param http where; port -1: any free one
     * @throws Refusal if bundles cannot be signed
     */
    static EmbeddedServer page(RunningRack rack, TokenFile tokens, NightHours night, Path storage, HttpEntry http)
            throws Refusal {
        var handOvers = new HandOverDesk(rack.teller(), new BundleWriter(Origin.current(), signingKey(storage)));
        var backups = new Backups(rack.backupSource(), storage.resolve("backups"), System::currentTimeMillis);
        List<Object> singletons = new ArrayList<>(List.of(
                rack,
                rack.happenings(),
                rack.intakes(),
                rack.calibrations(),
                tokens,
                new Sessions(tokens),
                night,
                handOvers,
                backups));
        rack.links().ifPresent(singletons::add);
        ApplicationContext context = ApplicationContext.builder()
                .properties(Map.of(
                        "micronaut.server.host", http.address(),
                        "micronaut.server.port", http.port(),
                        "ebbwatch.http.names", http.names()))
                .singletons(singletons.toArray())
                .banner(false)
                .start();
        return context.getBean(EmbeddedServer.class).start();
    }

    /**
     * The operator's token of these records; one that is made now is shown.
     *
     * @throws Refusal if it cannot be kept
     */
    static TokenFile tokens(Path storage, PrintWriter out) throws Refusal {
        var tokens = new TokenFile(storage);
        try {
            tokens.begin().ifPresent(token -> TokenCommand.show(token, out));
            return tokens;
        } catch (IOException e) {
            throw new Refusal("the operator's token cannot be kept in " + storage + ": " + e.getMessage());
        }
    }

    /**
     * The key that signs bundles of these records, made where there is none.
     *
     * @throws Refusal if it cannot be kept or is damaged
     */
    static SigningKey signingKey(Path storage) throws Refusal {
        try {
            return SigningKey.of(storage);
        } catch (IOException e) {
            throw new Refusal("bundles cannot be signed: " + e.getMessage());
        }
    }

    /**
     * Makes sure nobody listens there.
     *
     * @throws Refusal if somebody does, or the address is not this machine's
     */
    static void requireFree(String host, int port) throws Refusal {
        try (var socket = new ServerSocket(port, 1, InetAddress.getByName(host))) {
            socket.setReuseAddress(true);
        } catch (IOException e) {
            throw new Refusal("cannot listen on " + host + ":" + port + " (" + e.getMessage()
                    + "). Name another port, or stop what uses it.");
        }
    }
}
