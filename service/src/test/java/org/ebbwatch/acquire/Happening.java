package org.ebbwatch.acquire;

import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.time.Gap;

/** What a listener heard, to be compared. */
sealed interface Happening {
    record Identified(String serialNumber) implements Happening {}

    record Scan(long bootNumber, long scan, long eventMillis, int firstVolts) implements Happening {}

    record Silent(long eventMillis) implements Happening {}

    record GapBefore(Gap gap) implements Happening {}

    record Rebooted(long bootNumber) implements Happening {}

    record ClockOdd(boolean odd) implements Happening {}

    record Lead(int channel, LeadOutcome outcome, int before, int during) implements Happening {}

    record Answered(int sequence, Answer answer) implements Happening {}

    record Link(LinkState state) implements Happening {}
}
