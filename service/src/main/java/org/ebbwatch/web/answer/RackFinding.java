package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.Comparator;
import java.util.UUID;

/**
 * A finding and where on the rack it stands.
 *
 * @param passageId the passage it belongs to
 * @param tag the cell
 * @param board the board the cell is on
 * @param channel the channel, from 0
 * @param finding what stands
 */
@Serdeable
public record RackFinding(UUID passageId, String tag, String board, int channel, FindingAnswer finding) {

    static final Comparator<RackFinding> URGENT_FIRST = Comparator.comparing(
                    RackFinding::finding, FindingAnswer.URGENT_FIRST)
            .thenComparing(RackFinding::board)
            .thenComparing(RackFinding::channel);
}
