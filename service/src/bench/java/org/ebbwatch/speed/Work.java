package org.ebbwatch.speed;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** The time the measuring thread itself was computing, over all iterations. The clock also counts the time it waited for a core. */
@AuxCounters(AuxCounters.Type.EVENTS)
@State(Scope.Thread)
public class Work {
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    public long nanosAtWork;
    public long samples;

    private long sinceNanos;

    void begin() {
        sinceNanos = THREADS.getCurrentThreadCpuTime();
    }

    void end(int samplesRead) {
        nanosAtWork += THREADS.getCurrentThreadCpuTime() - sinceNanos;
        samples += samplesRead;
    }
}
