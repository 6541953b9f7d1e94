package org.ebbwatch.acquire;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.UUID;
import org.ebbwatch.time.HostTime;
import org.ebbwatch.time.WallQuality;

/**
 * This machine's clocks.
 *
 * <p>On Linux monotonic times count from the machine's boot, time asleep included, and can be compared between runs of the
 * service within one boot. Java's own monotonic clock stands still while the machine sleeps; the time since boot is therefore
 * read again every second and whenever wall and monotonic clock drift apart. Elsewhere monotonic times count from the start of
 * this process.
 *
 * <p>The wall clock counts as known where a time service has left its mark or the machine has a clock chip; elsewhere than on
 * Linux always.
 */
public final class SystemHostClock implements HostClock {

    private static final Path BOOT_ID = Path.of("/proc/sys/kernel/random/boot_id");
    private static final Path UPTIME = Path.of("/proc/uptime");
    private static final Path TIME_SERVICE_MARK = Path.of("/run/systemd/timesync/synchronized");
    private static final Path CLOCK_CHIP = Path.of("/sys/class/rtc/rtc0");
    private static final long SECOND_NANOS = 1_000_000_000L;
    private static final long QUALITY_NANOS = 60 * SECOND_NANOS;

    private final boolean linux =
            System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("linux");
    private final String hostBoot;
    private long offsetNanos;
    private long offsetReadNanos;
    private long wallAheadNanos;
    private long qualityReadNanos;
    private WallQuality quality;

    public SystemHostClock() {
        hostBoot = readBootId();
        long nanos = System.nanoTime();
        readOffset(nanos, wallNanos());
        readQuality(nanos);
    }

    @Override
    public synchronized HostTime now() {
        long nanos = System.nanoTime();
        long wallNanos = wallNanos();
        boolean apart = Math.abs(wallNanos - nanos - wallAheadNanos) > SECOND_NANOS;
        if (apart || nanos - offsetReadNanos > SECOND_NANOS) {
            readOffset(nanos, wallNanos);
        }
        if (nanos - qualityReadNanos > QUALITY_NANOS) {
            readQuality(nanos);
        }
        return new HostTime(hostBoot, nanos + offsetNanos, wallNanos / 1_000_000, quality);
    }

    private static long wallNanos() {
        return System.currentTimeMillis() * 1_000_000;
    }

    private String readBootId() {
        try {
            return Files.readString(BOOT_ID).strip();
        } catch (IOException e) {
            return "process-" + UUID.randomUUID();
        }
    }

    private void readOffset(long nanos, long wallNanos) {
        offsetReadNanos = nanos;
        wallAheadNanos = wallNanos - nanos;
        OptionalLong sinceBoot = sinceBootNanos();
        // The file counts in hundredths: only time asleep moves the offset, not its rounding.
        if (sinceBoot.isPresent() && (offsetNanos == 0 || sinceBoot.getAsLong() - nanos - offsetNanos > SECOND_NANOS)) {
            offsetNanos = sinceBoot.getAsLong() - nanos;
        }
    }

    private static OptionalLong sinceBootNanos() {
        try {
            String uptime = Files.readString(UPTIME, StandardCharsets.US_ASCII);
            return OptionalLong.of(
                    (long) (Double.parseDouble(uptime.substring(0, uptime.indexOf(' '))) * SECOND_NANOS));
        } catch (IOException e) {
            return OptionalLong.empty();
        }
    }

    private void readQuality(long nanos) {
        qualityReadNanos = nanos;
        boolean known = !linux || Files.exists(TIME_SERVICE_MARK) || Files.exists(CLOCK_CHIP);
        quality = known ? WallQuality.KNOWN : WallQuality.UNSYNCHRONISED;
    }
}
