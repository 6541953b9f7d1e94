package org.ebbwatch.demo;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.ebbwatch.demo.Workshop.Bench;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Happening;
import org.ebbwatch.sim.fault.Trigger;

/** Benches of any cells with any faults at any time, the same for the same seed. */
final class RandomBench {
    private static final List<Happening> WHEN = List.of(Happening.values());

    private RandomBench() {}

    static Bench of(long seed, int cells) {
        var random = new Random(seed);
        List<StoryCell> all = new ArrayList<>();
        for (int channel = 0; channel < cells; channel++) {
            Optional<Fault> fault = random.nextInt(3) == 0 ? Optional.empty() : Optional.of(fault(random, channel));
            double ampereHours = 0.3 + 1.5 * random.nextDouble();
            all.add(new StoryCell(
                    cell(random, channel, ampereHours), 30 / ampereHours, fault, Set.of(), Set.of(), true));
        }
        List<Fault> board = new ArrayList<>();
        for (FaultKind kind : List.of(FaultKind.SILENT, FaultKind.REBOOT, FaultKind.CORRUPT_BYTES, FaultKind.SUN)) {
            if (random.nextInt(3) == 0) {
                board.add(Fault.onBoard(kind, Trigger.at(within(random, 60)))
                        .lasting(1 + within(random, random.nextBoolean() ? 1 : 4)));
            }
        }
        return new Bench("any", all, board, false, random.nextBoolean());
    }

    private static CellSpec cell(Random random, int channel, double ampereHours) {
        Chemistry chemistry = random.nextInt(3) == 0 ? Chemistry.LFP : Chemistry.NMC;
        CellSpec.Builder cell = CellSpec.build("any " + channel, chemistry, ampereHours)
                .spread(0.1)
                .slowShare(new SlowShare(0.004 * random.nextDouble(), 5 + 60 * random.nextDouble()));
        return (random.nextInt(3) == 0 ? cell.diffusion() : cell).done();
    }

    private static Fault fault(Random random, int channel) {
        List<FaultKind> kinds = List.of(FaultKind.values()).stream()
                .filter(kind -> kind.scope() == FaultKind.Scope.CHANNEL && kind != FaultKind.SWAPPED)
                .toList();
        FaultKind kind = kinds.get(random.nextInt(kinds.size()));
        var trigger = Trigger.after(WHEN.get(random.nextInt(WHEN.size())), within(random, 20));
        Fault fault = Fault.on(channel, kind, trigger);
        return random.nextBoolean() ? fault : fault.lasting(1 + within(random, 10));
    }

    private static long within(Random random, int hours) {
        return (long) (random.nextDouble() * Duration.ofHours(hours).toMillis());
    }
}
