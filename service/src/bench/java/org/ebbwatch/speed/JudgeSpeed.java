package org.ebbwatch.speed;

import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * Samples a second that one thread judges; a sample is one scan of one channel. An invocation folds hours of scans, one a second,
 * into judges that have just come to their stage: getting there is not counted, making the scans is.
 */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class JudgeSpeed {
    private static final int SAMPLES = Stage.STEPS;
    private static final int CHANNELS = 64;
    private static final int ROUNDS = 5_400;
    private static final int RACK_SAMPLES = CHANNELS * ROUNDS;

    @State(Scope.Thread)
    public static class One {
        @Param
        private Stage stage;

        private Channel channel;

        @Setup(Level.Invocation)
        public void begin() {
            channel = new Channel(stage);
        }

        @TearDown(Level.Invocation)
        public void end() {
            channel.end();
        }
    }

    /** Stages by turns, so that neighbours differ. */
    @State(Scope.Thread)
    public static class Rack {
        private final Channel[] channels = new Channel[CHANNELS];

        @Setup(Level.Invocation)
        public void begin() {
            Stage[] stages = Stage.values();
            Arrays.setAll(channels, place -> new Channel(stages[place % stages.length]));
        }

        @TearDown(Level.Invocation)
        public void end() {
            Arrays.stream(channels).forEach(Channel::end);
        }
    }

    @State(Scope.Thread)
    public static class Scans {
        private Course course;

        @Setup(Level.Invocation)
        public void begin() {
            course = new Course(0, true, 3.9, 2.9, SAMPLES);
        }
    }

    /** One cell for twelve hours. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public void cell(One one, Work work, Blackhole outcomes) {
        work.begin();
        Channel channel = one.channel;
        for (int sample = 0; sample < SAMPLES; sample++) {
            outcomes.consume(channel.readOnce());
        }
        work.end(SAMPLES);
    }

    /** 64 cells scan by scan, each for an hour and a half. */
    @Benchmark
    @OperationsPerInvocation(RACK_SAMPLES)
    public void rack(Rack rack, Work work, Blackhole outcomes) {
        work.begin();
        for (int round = 0; round < ROUNDS; round++) {
            for (Channel channel : rack.channels) {
                outcomes.consume(channel.readOnce());
            }
        }
        work.end(RACK_SAMPLES);
    }

    /** What making the scans alone takes. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public void scansAlone(Scans scans, Work work, Blackhole made) {
        work.begin();
        for (int sample = 0; sample < SAMPLES; sample++) {
            made.consume(scans.course.next());
        }
        work.end(SAMPLES);
    }
}
