package org.ebbwatch.alarm;

import java.util.UUID;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.alarm.book.Cover;

/**
 * What came of a request about an alarm that was done.
 *
 * @param alarm which
 * @param sequence how many steps it had made afterwards, by which it can be acted on next
 * @param kind what it is about
 * @param step what was asked for
 * @param state where it was afterwards; {@link AlarmState#NORMAL} and no cover: it is over
 * @param cover what covered it afterwards
 * @param by who asked
 */
public record AlarmReceipt(
        UUID alarm, long sequence, AlarmKind kind, AlarmStep step, AlarmState state, Cover cover, String by) {}
