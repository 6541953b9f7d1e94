package org.ebbwatch.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.ebbwatch.bench.ReplugRig.Plug;
import org.ebbwatch.bench.ReplugRig.Round;

/**
 * Pulls the plug of every board of a rack, waits until its silence is told, and puts it back, over and over. Arguments: how often in
 * a row (200), of how many boards at a time (4). See docs/benchmarks/replug.md.
 */
final class ReplugBench {
    private static final int WARM_UP = 5;

    private ReplugBench() {}

    public static void main(String[] arguments) throws Exception {
        int times = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200;
        int boards = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 4;
        List<Round> rounds = new ArrayList<>();
        Held before;
        Held after;
        ExecutorService people = Executors.newFixedThreadPool(boards);
        try (ReplugRig rig = new ReplugRig(boards, Files.createTempDirectory("ebbwatch-replug"))) {
            for (Plug plug : rig.plugs()) {
                plug.begin();
            }
            replug(rig, WARM_UP, people);
            before = Held.now();
            rounds.addAll(replug(rig, times, people));
            after = Held.now();
        } finally {
            people.shutdown();
        }
        System.out.printf(Locale.ROOT, "%d boards, %d replugs each, milliseconds%n", boards, times);
        System.out.println("| | median | p99 | most |");
        System.out.println("| --- | --- | --- | --- |");
        line(
                "pulled, until SILENT was told",
                rounds.stream().mapToLong(Round::silent).toArray());
        line(
                "back, until it had proven who it is",
                rounds.stream().mapToLong(Round::connected).toArray());
        line(
                "back, until its next reading",
                rounds.stream().mapToLong(Round::heard).toArray());
        System.out.println("held before " + before);
        System.out.println("held after  " + after);
        System.exit(0);
    }

    private static List<Round> replug(ReplugRig rig, int times, ExecutorService people) throws Exception {
        List<Future<List<Round>>> asked = new ArrayList<>();
        for (Plug plug : rig.plugs()) {
            asked.add(people.submit(() -> inARow(plug, times)));
        }
        List<Round> rounds = new ArrayList<>();
        for (Future<List<Round>> each : asked) {
            rounds.addAll(each.get());
        }
        return rounds;
    }

    private static List<Round> inARow(Plug plug, int times) throws IOException, InterruptedException {
        List<Round> rounds = new ArrayList<>();
        for (int time = 0; time < times; time++) {
            rounds.add(plug.replug());
        }
        return rounds;
    }

    private static void line(String what, long[] millis) {
        Arrays.sort(millis);
        System.out.printf(
                Locale.ROOT,
                "| %s | %d | %d | %d |%n",
                what,
                millis[millis.length / 2],
                millis[(int) (0.99 * (millis.length - 1))],
                millis[millis.length - 1]);
    }
}
