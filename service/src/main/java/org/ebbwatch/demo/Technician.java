package org.ebbwatch.demo;

import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.sim.rack.CellTruth;

/** The person of the story: comes at eight, leaves at eight, does what the service asks for and nothing else. */
final class Technician {
    private static final int COMES_HOUR = 8;
    private static final int LEAVES_HOUR = 20;
    private static final long HAND_WORK_MILLIS = Duration.ofMinutes(30).toMillis();
    private static final long RETAPING_MILLIS = Duration.ofHours(24).toMillis();

    private static final long PATIENCE_MILLIS = Duration.ofDays(3).toMillis();

    private final Hands hands;
    private final Set<UUID> sensorsRetaped = new HashSet<>();

    Technician(Hands hands) {
        this.hands = hands;
    }

    static boolean isThere(long eventMillis) {
        long hour = (eventMillis / 3_600_000 + Workshop.OPENING_HOUR) % 24;
        return hour >= COMES_HOUR && hour < LEAVES_HOUR;
    }

    /** Looks at one passage and does what it waits for. */
    void attend(PassageView passage, long eventMillis) {
        if (!isThere(eventMillis)) {
            return;
        }
        if (passage.standing().contains(Wish.ASK_PUT_ON)) {
            hands.act(passage, Act.PUT_ON);
        } else if (passage.standing().contains(Wish.ASK_TIE_OFF)) {
            hands.announce(passage, HAND_WORK_MILLIS);
            hands.bond(passage);
            hands.act(passage, Act.TIE_OFF);
        } else if (passage.standing().contains(Wish.ASK_METER)) {
            hands.meter(passage);
        } else if (passage.standing().contains(Wish.ASK_PART)) {
            hands.act(passage, Act.PART);
            hands.part(passage);
        } else if (passage.standing().contains(Wish.ASK_RELEASE)) {
            hands.act(passage, Act.RELEASE);
        } else if (passage.findings().stream().anyMatch(finding -> finding.kind() == FindingKind.STALLED)
                && eventMillis - passage.openedMillis() > PATIENCE_MILLIS) {
            hands.act(passage, Act.WITHDRAW);
        } else if (isBlind(passage) && eventMillis - passage.openedMillis() > RETAPING_MILLIS) {
            retape(passage);
        }
    }

    /** What a meter held to the cell's own terminals shows, whether or not the channel's leads are on them. */
    static double meterVolts(CellTruth truth) {
        return truth.attached() ? truth.leadVolts() : truth.openCircuitVolts();
    }

    private static boolean isBlind(PassageView passage) {
        return passage.phase() != Phase.HELD
                && passage.findings().stream().anyMatch(finding -> finding.kind() == FindingKind.SENSOR_FAULT);
    }

    /** Tapes the thermistor back on; the script of the story lets it stick by then. */
    private void retape(PassageView passage) {
        if (sensorsRetaped.add(passage.id())) {
            hands.announce(passage, HAND_WORK_MILLIS);
        }
    }
}
