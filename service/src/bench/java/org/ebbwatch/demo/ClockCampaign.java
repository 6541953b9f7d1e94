package org.ebbwatch.demo;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;

/** Watches scenarios with every odd clock and with steady ones. Arguments: scenarios (10), hours of each (60). */
final class ClockCampaign {
    private ClockCampaign() {}

    public static void main(String[] arguments) throws Exception {
        int scenarios = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10;
        Duration time = Duration.ofHours(arguments.length > 1 ? Integer.parseInt(arguments[1]) : 60);
        Path folder = Files.createTempDirectory("ebbwatch-clocks");
        System.out.println("| scenario | entries and verdicts | clocks | judged otherwise |");
        System.out.println("| --- | --- | --- | --- |");
        for (long scenario = 1; scenario <= scenarios; scenario++) {
            List<String> steady =
                    ClockTrial.run(folder.resolve(scenario + " steady"), scenario, time, 1, OddClocks.NONE);
            int otherwise = 0;
            for (Map.Entry<String, OddClocks> odd : OddClocks.all().entrySet()) {
                Path records = folder.resolve(scenario + " " + odd.getKey());
                if (!ClockTrial.run(records, scenario, time, 1, odd.getValue()).equals(steady)) {
                    System.out.println("scenario " + scenario + " is judged otherwise: " + odd.getKey());
                    otherwise++;
                }
            }
            long scans =
                    steady.stream().filter(line -> line.startsWith("scan at")).count();
            System.out.println("| " + scenario + " | " + scans + " scans, " + (steady.size() - scans) + " others | "
                    + OddClocks.all().size() + " | " + otherwise + " |");
        }
    }
}
