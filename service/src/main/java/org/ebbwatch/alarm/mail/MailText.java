package org.ebbwatch.alarm.mail;

import static org.ebbwatch.alarm.outlet.MessageField.ACKNOWLEDGE_LINK;
import static org.ebbwatch.alarm.outlet.MessageField.ALARM_ID;
import static org.ebbwatch.alarm.outlet.MessageField.AT;
import static org.ebbwatch.alarm.outlet.MessageField.CAUSE_BOARD;
import static org.ebbwatch.alarm.outlet.MessageField.CAUSE_CHANNEL;
import static org.ebbwatch.alarm.outlet.MessageField.CAUSE_LINE;
import static org.ebbwatch.alarm.outlet.MessageField.CAUSE_SIMULATED;
import static org.ebbwatch.alarm.outlet.MessageField.CELLS;
import static org.ebbwatch.alarm.outlet.MessageField.CONSEQUENCE;
import static org.ebbwatch.alarm.outlet.MessageField.KIND;
import static org.ebbwatch.alarm.outlet.MessageField.RAISED_AT;
import static org.ebbwatch.alarm.outlet.MessageField.REASON;
import static org.ebbwatch.alarm.outlet.MessageField.SEQUENCE;
import static org.ebbwatch.alarm.outlet.MessageField.STEP;
import static org.ebbwatch.alarm.outlet.MessageField.TO_DO;
import static org.ebbwatch.alarm.outlet.MessageField.WHAT;
import static org.ebbwatch.alarm.outlet.MessageField.WHO;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.ebbwatch.alarm.outlet.MessageField;
import org.ebbwatch.alarm.outlet.OutletMessage;

/** A message as a mail: a subject that is read at a glance, and plain text that says what, where and what to do. */
final class MailText {
    private static final int LONGEST_PLACE = 60;
    private static final Map<String, String> HAPPENED = Map.of(
            "RETURNED", "gone",
            "ACKNOWLEDGED", "acknowledged",
            "RESET", "over",
            "SHELVED", "shelved",
            "TAKEN_OUT_OF_SERVICE", "out of service",
            "ESCALATED", "nobody has acknowledged it");

    private static final String TEXT = "text";

    private final OutletMessage message;

    MailText(OutletMessage message) {
        this.message = message;
    }

    /** What is the matter and where; behind it, if it is not the beginning, what came of it. */
    String subject() {
        if (isNotice()) {
            return get(WHAT);
        }
        String cells = get(CELLS);
        String where = cells.isEmpty() ? board() : cells;
        String happened = HAPPENED.getOrDefault(get(STEP), "");
        String place = where.length() > LONGEST_PLACE ? where.substring(0, LONGEST_PLACE) + "..." : where;
        return get(KIND) + (place.isEmpty() ? "" : " " + place) + (happened.isEmpty() ? "" : ": " + happened);
    }

    /** A notice is about the rack and no alarm; it brings its own text. */
    private boolean isNotice() {
        return get(ALARM_ID).isEmpty();
    }

    String body() {
        if (isNotice()) {
            return message.fields().getOrDefault(TEXT, "").replaceAll("\\R", "\r\n");
        }
        List<String> lines = new ArrayList<>();
        lines.add(get(WHAT));
        lines.add("");
        lines.add("Where:   " + where());
        lines.add("To do:   " + get(TO_DO));
        lines.add("Else:    " + get(CONSEQUENCE));
        lines.add("Why:     " + get(CAUSE_LINE));
        lines.add("Since:   " + get(RAISED_AT));
        lines.add("Now:     " + now());
        if (Boolean.parseBoolean(get(CAUSE_SIMULATED))) {
            lines.add("         The board is simulated.");
        }
        if (!get(ACKNOWLEDGE_LINK).isEmpty()) {
            lines.add("");
            lines.add("To say that you know of it (once, within a day):");
            lines.add(get(ACKNOWLEDGE_LINK));
        }
        lines.add("");
        lines.add("Ebbwatch is a second pair of eyes, no safety device. Your emergency plan comes first.");
        return String.join("\r\n", lines) + "\r\n";
    }

    private String where() {
        String cells = get(CELLS);
        String board = board();
        if (cells.isEmpty()) {
            return board.isEmpty() ? "the rack" : board;
        }
        return (cells.contains(", ") ? "cells " : "cell ") + cells + (board.isEmpty() ? "" : ", " + board);
    }

    private String board() {
        String board = get(CAUSE_BOARD);
        boolean oneCell = !get(CAUSE_CHANNEL).isEmpty() && !get(CELLS).contains(", ");
        return board.isEmpty() ? "" : "board " + board + (oneCell ? ", channel " + get(CAUSE_CHANNEL) : "");
    }

    private String now() {
        String step = get(STEP).toLowerCase(Locale.ROOT).replace('_', ' ');
        String who = get(WHO).isEmpty() ? "" : " by " + get(WHO);
        String reason = get(REASON).isEmpty() ? "" : ": " + get(REASON);
        return step + who + reason + ", " + get(AT);
    }

    /** The same for every attempt at one step of an alarm; without the brackets around it. */
    String id(String domain) {
        return id(get(SEQUENCE), get(STEP), domain);
    }

    /** That of the step by which the alarm began; the other steps are replies to it. */
    String firstId(String domain) {
        return id("1", "RAISED", domain);
    }

    private String id(String sequence, String step, String domain) {
        if (isNotice()) {
            return message.id() + "@" + domain;
        }
        return get(ALARM_ID) + '.' + sequence + '.' + step.toLowerCase(Locale.ROOT) + '@' + domain;
    }

    private String get(MessageField field) {
        return message.field(field).replaceAll("[\\r\\n]+", " ");
    }
}
