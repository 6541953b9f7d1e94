package org.ebbwatch.night;

import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Phase;

/** Where a passage is, finer than its phase: what goes wrong goes wrong so long after one of these was reached. */
enum Stage {
    CHECK_IN,
    DRAINING,
    HOLD,
    REST,
    TIED,
    PARTED,
    OTHER;

    static Stage of(Judge judge, double leadVolts) {
        Phase phase = judge.phase();
        return switch (phase) {
            case CHECK_IN -> CHECK_IN;
            case DRAIN -> leadVolts < 0.1 && judge.isLoadOn() ? HOLD : DRAINING;
            case REST -> REST;
            case TIE_OFF -> judge.isBonded() ? TIED : PARTED;
            default -> OTHER;
        };
    }
}
