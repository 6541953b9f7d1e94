package org.ebbwatch.rough;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.sim.rack.SimBoard;

/** Lets disks fail under a watch. Argument: how often each (5). For root, with gcc, on Linux; what cannot be made is skipped and said. */
final class StorageCampaign {
    private StorageCampaign() {}

    public static void main(String[] arguments) throws Exception {
        int times = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 5;
        Optional<String> obstacle = SmallDisk.obstacle();
        if (obstacle.isEmpty()) {
            System.out.println(
                    "| disk | alarm after, ms | HOT after, ms | kept again after, ms | holes | broken promises |");
            System.out.println("| --- | --- | --- | --- | --- | --- |");
            for (int i = 0; i < times; i++) {
                night("full", SmallDisk::fill, SmallDisk::makeRoom);
                night("can only be read", SmallDisk::breakDown, SmallDisk::mend);
            }
            startsOnAFullDisk();
        } else {
            System.out.println("skipped: " + obstacle.get());
        }
        System.out.println("| forcing takes, ms | up after, ms | HOT after, ms | loads opened by the board | alarms |");
        System.out.println("| --- | --- | --- | --- | --- |");
        for (long millis : List.of(0L, 100L, 300L, 1_000L, 3_000L)) {
            slow(millis);
        }
    }

    private static void night(String name, DiskNight.Happening failure, DiskNight.Happening mending) throws Exception {
        try (DiskNight night = new DiskNight(Files.createTempDirectory("ebbwatch-disk"))) {
            DiskNight.Result result = night.run(failure, mending);
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %d | %d | %d | %s |%n",
                    name,
                    result.toldMillis(),
                    result.hotMillis(),
                    result.keptMillis(),
                    result.holes(),
                    result.trouble());
        } catch (AssertionError e) {
            System.out.println("| " + name + " | " + e.getMessage() + " |");
        }
    }

    private static void startsOnAFullDisk() throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("ebbwatch-disk");
        try (SmallDisk disk = SmallDisk.mount(folder, 16);
                ServeNight night = new ServeNight(folder, disk.folder().resolve("records"), Map.of())) {
            night.start();
            disk.fill();
            night.await(() -> night.alarms().contains("STORAGE_FAULT"));
            night.service().kill();
            System.out.println("killed and started on a full disk: up after "
                    + night.start()
                            .map(String::valueOf)
                            .orElse("never: " + night.service().lastSaid()) + " ms, HOT after "
                    + night.heat().map(String::valueOf).orElse("never") + " ms");
        }
    }

    private static void slow(long millis) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("ebbwatch-disk");
        Optional<Map<String, String>> environment = SlowDisk.environment(folder, millis);
        if (environment.isEmpty()) {
            System.out.println("skipped: there is no gcc");
            return;
        }
        try (ServeNight night =
                new ServeNight(folder, Files.createDirectory(folder.resolve("records")), environment.get())) {
            Optional<Long> up = night.start();
            Optional<Long> hot = night.heat();
            boolean opened = night.board().call(SimBoard::isHostLost).join();
            System.out.println("| " + millis + " | " + up.map(String::valueOf).orElse("never") + " | "
                    + hot.map(String::valueOf).orElse("never") + " | " + opened + " | " + night.alarms() + " |");
        }
    }
}
