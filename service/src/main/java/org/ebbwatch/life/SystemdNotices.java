package org.ebbwatch.life;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells the service manager that started this process when it is ready, that it works, and that it stops: the lines READY=1,
 * WATCHDOG=1 and STOPPING=1 of sd_notify(3). The watchdog is fed only while acquisition works, at half the time the manager asks
 * for. Has no thread: {@link #step} is called often. Not thread-safe.
 */
final class SystemdNotices implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(SystemdNotices.class);

    private final NotifySocket socket;
    private final OptionalLong feedMillis;
    private boolean fed;
    private long fedMillis;
    private boolean failed;

    SystemdNotices(NotifySocket socket, OptionalLong feedMillis) {
        this.socket = socket;
        this.feedMillis = feedMillis;
    }

    /**
     * The manager that the environment names; empty: none started this process, or it cannot be reached.
     *
     * @param processId of this process, against WATCHDOG_PID
     */
    static Optional<SystemdNotices> of(Map<String, String> environment, long processId) {
        String address = environment.getOrDefault("NOTIFY_SOCKET", "");
        if (address.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new SystemdNotices(NotifySocket.to(address), feedMillis(environment, processId)));
        } catch (IOException | LinkageError e) {
            LOG.warn("The service manager cannot be told how the service does: {}", e.getMessage());
            return Optional.empty();
        }
    }

    /** Half of what WATCHDOG_USEC asks for; empty where it asks for nothing, or another process. */
    static OptionalLong feedMillis(Map<String, String> environment, long processId) {
        String microseconds = environment.getOrDefault("WATCHDOG_USEC", "");
        String asked = environment.getOrDefault("WATCHDOG_PID", "");
        boolean mine = asked.isEmpty() || asked.equals(Long.toString(processId));
        return mine && microseconds.matches("[1-9][0-9]{0,17}")
                ? OptionalLong.of(Math.max(1, Long.parseLong(microseconds) / 2_000))
                : OptionalLong.empty();
    }

    /** The service has begun to watch. */
    void ready() {
        tell("READY=1\nSTATUS=Watching\n");
    }

    /** Feeds the watchdog if it is time and acquisition works. */
    void step(Progress progress, long monotonicMillis) {
        boolean due = feedMillis.isPresent() && (!fed || monotonicMillis - fedMillis >= feedMillis.getAsLong());
        if (due && progress.isWorking()) {
            fed = true;
            fedMillis = monotonicMillis;
            tell("WATCHDOG=1\n");
        }
    }

    /** The service stops. */
    @Override
    public void close() {
        tell("STOPPING=1\n");
        socket.close();
    }

    private void tell(String lines) {
        try {
            socket.send(lines);
            failed = false;
        } catch (IOException e) {
            if (!failed) {
                LOG.warn("{}", e.getMessage());
            }
            failed = true;
        }
    }
}
