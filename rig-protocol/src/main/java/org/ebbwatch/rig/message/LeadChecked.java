package org.ebbwatch.rig.message;

import java.util.Objects;

/**
 * What a lead check found; answers {@link CheckLead}.
 *
 * @param requestSequence sequence of the frame that asked, u16
 * @param channel 0-based, 0 to 254
 * @param outcome what the board concludes
 * @param voltsBefore counts, without the pull
 * @param voltsDuring counts, at the end of the pull
 */
public record LeadChecked(int requestSequence, int channel, LeadOutcome outcome, int voltsBefore, int voltsDuring)
        implements BoardMessage {
    public LeadChecked {
        Bounds.u16("requestSequence", requestSequence);
        Bounds.channel(channel);
        Objects.requireNonNull(outcome, "outcome");
    }

    @Override
    public Kind kind() {
        return Kind.LEAD_CHECKED;
    }
}
