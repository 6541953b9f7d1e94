package org.ebbwatch.rig.wire;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.message.Readings;
import org.junit.jupiter.api.Test;

/** Counts the bytes this thread allocates while it decodes: a count, not a time, so it is the same on a busy machine. */
class AllocationTest {
    private static final int FRAMES = 5_000;
    private static final int CHANNELS = 64;
    private static final long LESS_THAN_ANY_OBJECT_PER_FRAME = FRAMES;

    private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private final byte[] frame = FrameEncoder.encode(scan(), 0);

    /** Reads every number of every reading, and keeps none but their sum. */
    private static final class SummingSink implements FrameSink {
        private long sum;

        @Override
        public void readings(ReadingsView view) {
            sum += view.bootNumber() + view.boardMillis() + view.scan() + view.contacts() + view.firstChannel();
            for (int i = 0; i < view.count(); i++) {
                sum += view.state(i) + view.volts(i) + view.celsius(i) + view.amperes(i);
            }
        }

        @Override
        public void message(int sequence, Message message) {}
    }

    /** Does the same with a copy, to show that the count would notice. */
    private static final class CopyingSink implements FrameSink {
        private long sum;

        @Override
        public void readings(ReadingsView view) {
            sum += view.toReadings().readings().get(0).volts();
        }

        @Override
        public void message(int sequence, Message message) {}
    }

    @Test
    void decoding_readings_allocates_nothing() {
        SummingSink sink = new SummingSink();
        long allocated = allocatedWhileDecoding(sink);
        assertThat(sink.sum).isNotZero();
        assertThat(allocated).isLessThan(LESS_THAN_ANY_OBJECT_PER_FRAME);
    }

    @Test
    void and_the_count_would_notice_it() {
        CopyingSink sink = new CopyingSink();
        assertThat(allocatedWhileDecoding(sink)).isGreaterThan(FRAMES * CHANNELS * 16L);
        assertThat(sink.sum).isNotZero();
    }

    private long allocatedWhileDecoding(FrameSink sink) {
        FrameDecoder decoder = new FrameDecoder(sink);
        feed(decoder);
        long before = threads.getCurrentThreadAllocatedBytes();
        feed(decoder);
        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        assertThat(decoder.framesGood()).isEqualTo(2 * FRAMES);
        return allocated;
    }

    private void feed(FrameDecoder decoder) {
        for (int i = 0; i < FRAMES; i++) {
            decoder.accept(frame, 0, 100);
            decoder.accept(frame, 100, frame.length - 100);
        }
    }

    private static Readings scan() {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < CHANNELS; i++) {
            readings.add(new Reading(0x27, 29_760 + i, 3_125 - i, 3_720));
        }
        return new Readings(17, 86_400_250, 86_400, 1, true, 0, readings);
    }
}
