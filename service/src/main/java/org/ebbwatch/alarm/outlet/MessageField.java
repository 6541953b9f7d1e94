package org.ebbwatch.alarm.outlet;

import java.util.Arrays;
import java.util.List;

/** What a message holds, field by field. {@code docs/alarms.md} says what each means. */
public enum MessageField {
    MESSAGE_ID("messageId"),
    NUMBER("number"),
    AT("at"),
    ALARM_ID("alarmId"),
    SEQUENCE("sequence"),
    STEP("step"),
    RINGS("rings"),
    KIND("kind"),
    URGENCY("urgency"),
    SUBJECT("subject"),
    STATE("state"),
    COVER("cover"),
    LATCHED("latched"),
    RAISED_AT("raisedAt"),
    WHAT("what"),
    CONSEQUENCE("consequence"),
    TO_DO("toDo"),
    CELLS("cells"),
    CAUSE_LINE("cause.line"),
    CAUSE_PASSAGE_ID("cause.passageId"),
    CAUSE_TAG("cause.tag"),
    CAUSE_BOARD("cause.board"),
    CAUSE_CHANNEL("cause.channel"),
    CAUSE_EVENT_MILLIS("cause.eventMillis"),
    CAUSE_JOURNAL_SEQUENCE("cause.journalSequence"),
    CAUSE_SIMULATED("cause.simulated"),
    CAUSE_SPEED("cause.speed"),
    WHO("who"),
    REASON("reason"),
    ACKNOWLEDGE_LINK("acknowledgeLink");

    private final String key;

    MessageField(String key) {
        this.key = key;
    }

    /** Its name in the message; a point stands between the object and its field. */
    public String key() {
        return key;
    }

    /** The names of all. */
    public static List<String> keys() {
        return Arrays.stream(values()).map(MessageField::key).toList();
    }
}
