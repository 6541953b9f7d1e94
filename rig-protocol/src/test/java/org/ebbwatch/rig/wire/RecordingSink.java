package org.ebbwatch.rig.wire;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.rig.message.Message;

/** Keeps everything a decoder hands on, readings as copies. */
final class RecordingSink implements FrameSink {
    /** A message with the sequence of its frame. */
    record Delivered(int sequence, Message message) {}

    final List<Delivered> delivered = new ArrayList<>();
    final List<Rejection> rejections = new ArrayList<>();
    final List<Integer> unknownKinds = new ArrayList<>();

    @Override
    public void readings(ReadingsView view) {
        delivered.add(new Delivered(view.sequence(), view.toReadings()));
    }

    @Override
    public void message(int sequence, Message message) {
        delivered.add(new Delivered(sequence, message));
    }

    @Override
    public void unknownKind(int sequence, int kind) {
        unknownKinds.add(kind);
    }

    @Override
    public void rejected(Rejection why) {
        rejections.add(why);
    }
}
