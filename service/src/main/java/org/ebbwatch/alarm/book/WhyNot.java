package org.ebbwatch.alarm.book;

/** Why an alarm does not allow what a person asks for, in a sentence that says what to do first. */
final class WhyNot {
    private WhyNot() {}

    static String words(Alarm alarm, AlarmStep step) {
        return switch (step) {
            case ACKNOWLEDGED ->
                alarm.cover() == Cover.NONE
                        ? "Somebody knows of it already: " + alarm.acknowledgedBy() + '.'
                        : "It is put away; bring it back into view first.";
            case RESET -> whyNoReset(alarm);
            case SHELVED, TAKEN_OUT_OF_SERVICE -> "It is put away already.";
            case SHELVING_ENDED -> "It is not shelved.";
            case PUT_BACK_IN_SERVICE -> "It is not out of service.";
            case RAISED, RETURNED, TOLD -> "No person asks for that.";
        };
    }

    private static String whyNoReset(Alarm alarm) {
        if (!alarm.kind().isLatched()) {
            return "Only a latched alarm is reset; this one ends by itself.";
        }
        if (alarm.cover() != Cover.NONE) {
            return "It is put away; bring it back into view first.";
        }
        return alarm.state().isActive()
                ? "Its condition still stands; it can be reset once that is gone and the alarm is acknowledged."
                : "It has to be acknowledged first.";
    }
}
