package org.ebbwatch.rough;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.LongStream;

/**
 * Kills the service, watching 64 channels once a second, many times. Arguments: kills (500), kills of one rack (50), racks at a
 * time (2), progress file (target/crash.progress). A rack that was interrupted begins anew; one that is done is in the file.
 */
final class CrashCampaign {
    private CrashCampaign() {}

    public static void main(String[] arguments) throws Exception {
        int kills = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 500;
        int killsOfRack = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 50;
        int atATime = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 2;
        var progress = new Progress(Path.of(arguments.length > 3 ? arguments[3] : "target/crash.progress"));
        Set<String> done =
                progress.done().stream().map(line -> line.split("\t", -1)[0]).collect(Collectors.toSet());
        ExecutorService racks = Executors.newFixedThreadPool(atATime);
        LongStream.rangeClosed(1, kills / killsOfRack)
                .filter(seed -> !done.contains(Long.toString(seed)))
                .forEach(seed -> racks.execute(() -> live(seed, killsOfRack, progress)));
        racks.shutdown();
        racks.awaitTermination(1, TimeUnit.DAYS);
        tell(progress.done());
    }

    private static void live(long seed, int kills, Progress progress) {
        try {
            Path folder = Files.createTempDirectory("ebbwatch-crash-" + seed + "-");
            try (CrashRack rack = new CrashRack(folder, seed)) {
                for (int kill = 1; kill <= kills; kill++) {
                    rack.crash();
                    System.out.println("rack " + seed + " kill " + kill + " of " + kills + ": "
                            + rack.trouble().count() + " promises broken; " + rack.work());
                }
                rack.finish();
                rack.trouble().found().forEach(what -> System.out.println("rack " + seed + ": " + what));
                progress.add(seed + "\t" + kills + "\t" + rack.trouble().count() + "\t"
                        + rack.missing().stream().map(String::valueOf).collect(Collectors.joining(",")) + "\t"
                        + rack.work());
            }
        } catch (IOException e) {
            System.out.println("rack " + seed + " could not go on: " + e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void tell(List<String> lines) {
        int kills = 0;
        int broken = 0;
        List<Long> missing = new ArrayList<>();
        for (String line : lines) {
            String[] parts = line.split("\t", -1);
            kills += Integer.parseInt(parts[1]);
            broken += Integer.parseInt(parts[2]);
            Arrays.stream(parts[3].split(",", -1))
                    .filter(number -> !number.isEmpty())
                    .map(Long::valueOf)
                    .forEach(missing::add);
            System.out.println("rack " + parts[0] + ": " + parts[4]);
        }
        Collections.sort(missing);
        System.out.println("| kills | promises broken | kills after a scan was kept | scans missing, median | most |");
        System.out.println("| " + kills + " | " + broken + " | " + missing.size() + " | "
                + missing.get(missing.size() / 2) + " | " + missing.get(missing.size() - 1) + " |");
    }
}
