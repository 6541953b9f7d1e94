package org.ebbwatch.store;

import java.util.UUID;

/**
 * A step an alarm made.
 *
 * @param alarm whose
 * @param sequence orders the steps of an alarm, from 1
 * @param step what happened
 * @param stateBefore and {@code coverBefore}: where it was
 * @param stateAfter and {@code coverAfter}: where it is
 * @param who asked for it; empty where nobody did
 * @param reason why, where a person said so
 * @param causeEventMillis event time at which its condition began
 * @param causeLine why its condition stands
 * @param wall when, by the host's wall clock
 */
public record AlarmStepRow(
        UUID alarm,
        long sequence,
        String step,
        String stateBefore,
        String coverBefore,
        String stateAfter,
        String coverAfter,
        String who,
        String reason,
        long causeEventMillis,
        String causeLine,
        WallLabel wall) {}
