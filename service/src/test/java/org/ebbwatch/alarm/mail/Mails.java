package org.ebbwatch.alarm.mail;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.ebbwatch.alarm.outlet.OutletMessage;

/** Messages about a hot cell. */
final class Mails {
    static final String ALARM = "0193f0a0-0000-7000-8000-000000000001";

    private Mails() {}

    static OutletMessage message(int sequence, String step, Map<String, String> others) {
        Map<String, String> fields = new HashMap<>(Map.of(
                "alarmId", ALARM,
                "sequence", Integer.toString(sequence),
                "step", step,
                "kind", "HOT",
                "at", "2026-11-25T12:00:00Z",
                "raisedAt", "2026-11-25T11:58:00Z",
                "what", "A cell is hot.",
                "toDo", "Keep away. Clear the room."));
        fields.putAll(Map.of(
                "consequence", "It may vent poisonous smoke.",
                "cells", "A-17",
                "cause.board", "shed",
                "cause.channel", "3",
                "cause.line", "61.5 degC, trip at 60.0 degC.",
                "cause.simulated", "false"));
        fields.putAll(others);
        return new OutletMessage(new UUID(7, sequence), sequence, true, "{}", fields);
    }

    static OutletMessage raised() {
        return message(1, "RAISED", Map.of());
    }
}
