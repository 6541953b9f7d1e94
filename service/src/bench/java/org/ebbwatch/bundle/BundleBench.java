package org.ebbwatch.bundle;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.evidence.BundleVerifier;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.evidence.PassageRecords;
import org.ebbwatch.evidence.signature.SigningKey;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.JournalTaker;
import org.ebbwatch.passage.KeptEntry;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageChain;
import org.ebbwatch.trace.codec.Sha256;

/** Writes the bundle of an invented passage, read every second for 48 h, and verifies it: first cold, then warm. */
public final class BundleBench {
    private static final int SECONDS = 48 * 3600;
    private static final int SEGMENT_SECONDS = 600;
    private static final int RUNS = 6;
    private static final long WALL_MILLIS = 1_750_000_000_000L;
    private static final double MEBI = 1 << 20;

    private BundleBench() {}

    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("ebbwatch-bundle-bench-");
        var writer = new BundleWriter(Origin.current(), SigningKey.fresh());
        System.out.printf("heap at most %.0f MiB%n", Runtime.getRuntime().maxMemory() / MEBI);
        for (int run = 0; run < RUNS; run++) {
            long before = settle();
            long begin = System.nanoTime();
            long cpuBegin = cpu();
            Path bundle = writer.write(records(), folder.resolve("run-" + run)).file();
            long written = System.nanoTime();
            long cpuWritten = cpu();
            long peak = peak();
            BundleVerifier.verify(bundle);
            long verified = System.nanoTime();
            System.out.printf(
                    "run %d: written in %.2f s (%.2f s of processor), peak %.1f MiB above the %.1f before; %.2f MB; verified in %.2f s%n",
                    run,
                    (written - begin) / 1e9,
                    (cpuWritten - cpuBegin) / 1e9,
                    (peak - before) / MEBI,
                    before / MEBI,
                    Files.size(bundle) / 1e6,
                    (verified - written) / 1e9);
        }
    }

    /** What this thread took of a processor: on a busy machine the clock says little. */
    private static long cpu() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static List<MemoryPoolMXBean> heap() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .toList();
    }

    private static long settle() {
        System.gc();
        heap().forEach(MemoryPoolMXBean::resetPeakUsage);
        return heap().stream().mapToLong(pool -> pool.getUsage().getUsed()).sum();
    }

    /** Garbage that nobody had to collect yet counts too: run it with little heap to see what is needed. */
    private static long peak() {
        return heap().stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum();
    }

    private static PassageRecords records() {
        var cell = new CellCard("bench", Chemistry.LAYERED_OXIDE, 2.0, 10, true, false);
        UUID id = UUID.fromString("01900000-0000-7000-8000-0123456789ab");
        var card = new PassageCard(id, "bench", 0, cell, Procedure.careful(), 1, WALL_MILLIS, 0);
        return new PassageRecords(card, BundleBench::tell, List.of(), chain(), Optional.empty());
    }

    private static void tell(JournalTaker taker) {
        long sequence = 0;
        for (int second = 1; second <= SECONDS; second++) {
            if (second == 60) {
                taker.entry(++sequence, entry(sequence, new Entry.Acted((second - 1) * 1000L, Act.PUT_ON)));
            }
            taker.scan(++sequence, scan(second));
        }
        taker.entry(++sequence, entry(sequence, new Entry.Acted(SECONDS * 1000L, Act.WITHDRAW)));
    }

    private static KeptEntry entry(long sequence, Entry entry) {
        return new KeptEntry(sequence, entry.eventMillis(), WALL_MILLIS + entry.eventMillis(), entry);
    }

    private static Entry.Scan scan(int second) {
        double hours = second / 3600.0;
        int noise = second * 31 % 7 - 3;
        double volts =
                Math.round(1e4 * (hours < 8 ? 4.0 - hours / 8 : 3.0 * Math.exp(-(hours - 8) / 2) + 0.002) + noise)
                        / 1e4;
        return new Entry.Scan(
                second * 1000L,
                volts,
                Math.sqrt(1.6e-7 + 2.5e-7 * volts * volts),
                1e-4,
                Double.NaN,
                Math.round(1e3 * (21 + Math.sin(hours / 4)) + noise) / 1e3,
                Math.round(1e3 * (20.8 + Math.sin(hours / 4)) - noise) / 1e3,
                Double.NaN,
                Double.NaN,
                second >= 60,
                Entry.Suspicion.NONE);
    }

    private static PassageChain chain() {
        List<PassageChain.Link> links = new ArrayList<>();
        Sha256 previous = Sha256.NONE;
        for (int first = 1; first <= SECONDS; first += SEGMENT_SECONDS) {
            Sha256 hash = Sha256.of(previous + " " + first);
            long last = (first + SEGMENT_SECONDS - 1) * 1000L;
            links.add(new PassageChain.Link(1, first, first * 1000L, last, SEGMENT_SECONDS, previous, hash));
            previous = hash;
        }
        return new PassageChain(List.of(new PassageChain.Stay("bench", 0, 1, SECONDS * 1000L + 1, links)));
    }
}
