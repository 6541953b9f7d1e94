package org.ebbwatch.bench;

import com.github.f4b6a3.uuid.UuidCreator;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ebbwatch.acquire.PortAddress;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.AlarmWay;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.book.Route;
import org.ebbwatch.alarm.outlet.WebhookOutlet;
import org.ebbwatch.alarm.outlet.WebhookSettings;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.rack.RunningRack.BoardPort;

/**
 * How long after the last byte of the frame that shows a hot cell its webhook arrives, on a rack of 64 channels at ten scans a
 * second, records and all. Argument: how many racks (4), each with 64 cells that get hot one after another. See
 * docs/benchmarks/alarms.md.
 */
final class AlarmLatencyBench {
    private static final Pattern TAG = Pattern.compile("\"tag\"\\s*:\\s*\"cell-(\\d+)\"");
    private static final long WAIT_MILLIS = 90_000;

    private AlarmLatencyBench() {}

    public static void main(String[] arguments) throws Exception {
        int racks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 4;
        List<Double> millis = new ArrayList<>();
        for (int rack = 1; rack <= racks; rack++) {
            millis.addAll(delays());
            System.out.print("\rrack " + rack + " of " + racks);
        }
        Collections.sort(millis);
        System.out.printf(
                Locale.ROOT,
                "%n| alarms | missing | median | p95 | p99 | most |%n| %d | %d | %.1f ms | %.1f ms | %.1f ms | %.1f ms |%n",
                millis.size(),
                racks * ManyChannels.CHANNELS - millis.size(),
                share(millis, 0.5),
                share(millis, 0.95),
                share(millis, 0.99),
                millis.get(millis.size() - 1));
        System.exit(0);
    }

    private static double share(List<Double> sorted, double share) {
        return sorted.get((int) Math.min(sorted.size() - 1L, Math.round(share * (sorted.size() - 1))));
    }

    private static List<Double> delays() throws IOException, InterruptedException {
        Map<Integer, Long> arrived = new ConcurrentHashMap<>();
        HttpServer receiver = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        receiver.setExecutor(Executors.newFixedThreadPool(2));
        receiver.createContext("/", exchange -> {
            long now = System.nanoTime();
            String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            Matcher tag = TAG.matcher(body);
            if (body.contains("HOT") && tag.find()) {
                arrived.putIfAbsent(Integer.parseInt(tag.group(1)), now);
            }
            exchange.sendResponseHeaders(204, -1);
            exchange.close();
        });
        receiver.start();
        Path records = Files.createTempDirectory("ebbwatch-latency");
        var settings =
                new WebhookSettings("http://127.0.0.1:" + receiver.getAddress().getPort() + "/", Map.of());
        try (ManyChannels board = new ManyChannels();
                RunningRack rack = new RunningRack(
                        List.of(new BoardPort(
                                "many", Optional.empty(), new PortAddress.Tcp("127.0.0.1", board.port())::port)),
                        StoredRack.open(records),
                        NightHours.usual(ZoneOffset.UTC),
                        List.of(new AlarmWay(new WebhookOutlet("bench", settings, new SystemHostClock()), Route.ALL)),
                        Optional.empty(),
                        UuidCreator::getTimeOrderedEpoch,
                        new SystemHostClock())) {
            for (int channel = 0; channel < ManyChannels.CHANNELS; channel++) {
                var cell = new CellCard("cell-" + channel, Chemistry.LAYERED_OXIDE, 2, 4.7, false, false);
                rack.expect("many", channel, cell, Procedure.careful());
            }
            rack.start();
            long until = System.currentTimeMillis() + WAIT_MILLIS;
            while (arrived.size() < ManyChannels.CHANNELS && System.currentTimeMillis() < until) {
                Thread.sleep(100);
            }
            List<Double> millis = new ArrayList<>();
            arrived.forEach((channel, nanos) -> millis.add((nanos - board.shownNanos(channel)) / 1e6));
            return millis;
        } finally {
            receiver.stop(0);
        }
    }
}
