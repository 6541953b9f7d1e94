package org.ebbwatch.rough;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.link.TcpPort;

/** A watch whose disk fails under it and is brought back, in this process. Times are those of the host. */
final class DiskNight implements AutoCloseable {
    private static final String BOARD = "left";
    private static final int MEGABYTES = 8;
    private static final int CELLS = 8;
    private static final long SCAN_MILLIS = 50;
    private static final long PATIENCE_MILLIS = 60_000;
    private static final long LOOK_MILLIS = 50;

    private final SmallDisk disk;
    private final LineRack rack;
    private final Trouble trouble = new Trouble();

    /**
     * What happened when.
     *
     * @param toldMillis from the failure to the alarm STORAGE_FAULT
     * @param hotMillis from a cell that begins to heat, on a disk that has failed, to the alarm HOT
     * @param keptMillis from the mending to records that are kept again
     * @param holes in the readings, in the end
     */
    record Result(long toldMillis, long hotMillis, long keptMillis, int holes, List<String> trouble) {}

    /** A step that may fail. */
    @FunctionalInterface
    interface Happening {
        void happen(SmallDisk disk) throws IOException;
    }

    DiskNight(Path folder) throws IOException, InterruptedException {
        disk = SmallDisk.mount(folder, MEGABYTES);
        rack = new LineRack(disk.folder().resolve("records"), CELLS, SCAN_MILLIS)
                .board(BOARD, "SIM-DISK", TcpPort.listen(0), Harm.NONE, List.of())
                .start();
        await("connected", () -> rack.view(BOARD).link() == LinkState.CONNECTED);
        await("watching", () -> rack.view(BOARD).eventMillis() > 1_000);
    }

    /** Lets the disk fail, a cell get hot meanwhile, and the disk come back. */
    Result run(Happening failure, Happening mending) throws Exception {
        failure.happen(disk);
        long told = await("an alarm about the disk", () -> stands(AlarmKind.STORAGE_FAULT));
        rack.simulated(BOARD)
                .call(it -> {
                    it.addFault(Fault.on(0, FaultKind.WARMING, Trigger.at(0))
                            .with(Map.of("watts", 50.0, "riseMinutes", 0.0)));
                    return it;
                })
                .join();
        long hot = await("an alarm about the hot cell", () -> stands(AlarmKind.HOT));
        trouble.unless(rack.view(BOARD).link() == LinkState.CONNECTED, "the board is not connected any more");
        mending.happen(disk);
        long kept =
                await("records that are kept again", () -> rack.storageTrouble().isEmpty());
        LineRack.Kept found = rack.stop(trouble);
        trouble.unless(found.findings().contains("HOT"), "what was found meanwhile is not on record");
        return new Result(told, hot, kept, found.scans().get(BOARD).holes(), trouble.found());
    }

    private boolean stands(AlarmKind kind) {
        return rack.rack().alarms().alarms().stream()
                .filter(alarm -> alarm.kind() == kind)
                .map(AlarmView::state)
                .anyMatch(state -> state != AlarmState.RETURNED_UNACKNOWLEDGED);
    }

    private long await(String what, Callable<Boolean> condition) throws InterruptedException {
        long begunNanos = System.nanoTime();
        while (!holds(condition)) {
            if (millisSince(begunNanos) > PATIENCE_MILLIS) {
                throw new AssertionError("no " + what + " within a minute; storage: " + rack.storageTrouble());
            }
            Thread.sleep(LOOK_MILLIS);
        }
        return millisSince(begunNanos);
    }

    private static boolean holds(Callable<Boolean> condition) {
        try {
            return condition.call();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private static long millisSince(long nanos) {
        return (System.nanoTime() - nanos) / 1_000_000;
    }

    @Override
    public void close() throws IOException {
        try {
            rack.close();
        } finally {
            disk.close();
        }
    }
}
