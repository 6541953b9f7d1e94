package org.ebbwatch.intake;

import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.Voltage;

/** How a request about a card ended. Whatever is no {@link Done} has written nothing. */
public sealed interface IntakeReply {

    /** Written, or written before by the same request. */
    record Done(IntakeRecord record) implements IntakeReply {}

    /** There is no card with this tag. */
    record UnknownTag(String tag) implements IntakeReply {}

    /** Another card has this tag. */
    record TagTaken(String tag) implements IntakeReply {}

    /** There is no card yet to take anything over from. */
    record NothingToRepeat() implements IntakeReply {}

    /** A card needs this field. */
    record Missing(String field) implements IntakeReply {}

    /**
     * The measured volts do not fit the rest.
     *
     * @param why in a sentence
     */
    record VoltsUnfit(Voltage voltage, String why) implements IntakeReply {}

    /** What was once seen in this condition stays out; no later look lifts that. */
    record StaysOut(String tag, Condition condition) implements IntakeReply {}

    /** Something that was written is to be overwritten; that takes a reason. */
    record NeedsReason() implements IntakeReply {}

    /** The photo cannot be used. */
    record PhotoUnfit(String why) implements IntakeReply {}

    /** The card has been written on since the person looked. */
    record Stale(String tag, int seen, int current) implements IntakeReply {}

    /** The key belongs to another request. */
    record KeyUsed(String key) implements IntakeReply {}

    /** The records cannot be written or read now. */
    record RecordsAway(String why) implements IntakeReply {}
}
