package org.ebbwatch.speed;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The time the measuring thread itself was computing. The clock also counts the time it waited for a core. */
@AuxCounters(AuxCounters.Type.EVENTS)
@State(Scope.Thread)
public class Work {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private long sinceNanos;
    private long nanos;
    private long samples;

    @Setup(Level.Iteration)
    public void forget() {
        nanos = 0;
        samples = 0;
    }

    void begin() {
        sinceNanos = THREADS.getCurrentThreadCpuTime();
    }

    void end(int samplesRead) {
        nanos += THREADS.getCurrentThreadCpuTime() - sinceNanos;
        samples += samplesRead;
    }

    public double nanosASample() {
        return (double) nanos / samples;
    }
}
