package org.ebbwatch.rough;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;

/** Harms lines to boards in every way, at 20 scans a second. Arguments: seconds for each (300), seed (1). */
final class LineCampaign {
    private static final long REBOOT_EVERY_MILLIS = 60_000;
    private static final int AT_A_TIME = 3;

    private LineCampaign() {}

    public static void main(String[] arguments) throws Exception {
        long millis = 1_000L * (arguments.length > 0 ? Integer.parseInt(arguments[0]) : 300);
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        Path folder = Files.createTempDirectory("ebbwatch-line");
        List<LineCase> cases = LineCase.all(seed, REBOOT_EVERY_MILLIS);
        ExecutorService racks = Executors.newFixedThreadPool(AT_A_TIME);
        List<Future<LineCase.Result>> results = IntStream.range(0, cases.size())
                .mapToObj(i -> racks.submit(() -> cases.get(i).run(folder.resolve("line" + i), millis)))
                .toList();
        racks.shutdown();
        System.out.println("| line | scans sent | kept | wrong | found | alarms |");
        System.out.println("| --- | --- | --- | --- | --- | --- |");
        for (Future<LineCase.Result> future : results) {
            LineCase.Result result = future.get();
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %d | %d | %d | %s | %s |%n",
                    result.line().name(),
                    result.sent(),
                    result.kept(),
                    result.trouble().count(),
                    result.found().findings(),
                    result.alarms());
            result.trouble().found().forEach(System.out::println);
        }
    }
}
