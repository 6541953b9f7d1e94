package org.ebbwatch.cli;

import com.github.f4b6a3.uuid.UuidCreator;
import io.micronaut.context.ApplicationContext;
import io.micronaut.runtime.server.EmbeddedServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;
import org.ebbwatch.store.StorageException;

/** Puts a running rack, its storage and its page together. */
final class ServiceHost {
    private ServiceHost() {}

    /**
     * A rack with its records in {@code storage}, not yet started.
     *
     * @throws Refusal if the records cannot be opened
     */
    static RunningRack rack(List<BoardPort> boards, Path storage, NightHours night, List<Outlet> outlets)
            throws Refusal {
        return new RunningRack(
                boards, storage(storage), night, outlets, UuidCreator::getTimeOrderedEpoch, new SystemHostClock());
    }

    /**
     * The records in a folder.
     *
     * @throws Refusal if they cannot be opened
     */
    static StoredRack storage(Path storage) throws Refusal {
        try {
            return StoredRack.open(storage);
        } catch (StorageException e) {
            throw new Refusal("the records in " + storage + " cannot be opened: " + e.getMessage()
                    + ". If another service uses them, stop it or name another folder.");
        }
    }

    /** The page and the interface of a rack, being served. */
    static EmbeddedServer page(RackSource rack, String host, int port) {
        ApplicationContext context = ApplicationContext.builder()
                .properties(Map.of("micronaut.server.host", host, "micronaut.server.port", port))
                .singletons(rack)
                .banner(false)
                .start();
        return context.getBean(EmbeddedServer.class).start();
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
