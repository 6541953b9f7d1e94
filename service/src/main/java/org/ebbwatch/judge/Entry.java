package org.ebbwatch.judge;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * One entry of a passage's journal. Entries are folded in the order of their sequence; {@link #eventMillis()} never falls
 * from one entry to the next.
 */
public sealed interface Entry {

    /** Event time in milliseconds: the board's own clock, unwrapped. */
    long eventMillis();

    /**
     * One calibrated reading of the channel. Quantities that were not read, or that the board itself marks invalid, are
     * NaN.
     *
     * @param volts at the cell's terminals
     * @param expandedVolts expanded uncertainty U (k = 2) of {@code volts}, above 0
     * @param resolutionVolts the step of one count, above 0
     * @param amperes through the load, discharge positive
     * @param celsius the cell's own sensor
     * @param ambientCelsius the rack's ambient sensor
     * @param referenceCelsius the dummy cell in the watch container; NaN where there is none
     * @param bankCelsius the resistor bank's own sensor; NaN where there is none
     * @param loadApplied what the board says its load switch does
     * @param suspect what the board itself says against the reading
     * @param stringVolts across all cells of the string it is in, in the same scan; NaN where it is in none, or one is not known
     */
    record Scan(
            long eventMillis,
            double volts,
            double expandedVolts,
            double resolutionVolts,
            double amperes,
            double celsius,
            double ambientCelsius,
            double referenceCelsius,
            double bankCelsius,
            boolean loadApplied,
            Suspicion suspect,
            double stringVolts)
            implements Entry {
        public Scan {
            requireNonNull(suspect);
            if (!(expandedVolts > 0) || !(resolutionVolts > 0)) {
                throw new IllegalArgumentException("uncertainty and resolution must be above 0 V, not " + expandedVolts
                        + " and " + resolutionVolts);
            }
        }

        /** Of a cell that is in no string. */
        public Scan(
                long eventMillis,
                double volts,
                double expandedVolts,
                double resolutionVolts,
                double amperes,
                double celsius,
                double ambientCelsius,
                double referenceCelsius,
                double bankCelsius,
                boolean loadApplied,
                Suspicion suspect) {
            this(
                    eventMillis,
                    volts,
                    expandedVolts,
                    resolutionVolts,
                    amperes,
                    celsius,
                    ambientCelsius,
                    referenceCelsius,
                    bankCelsius,
                    loadApplied,
                    suspect,
                    Double.NaN);
        }
    }

    /** What a board may say against its own reading. */
    enum Suspicion {
        NONE,
        /** The voltage stands at an end of the converter's range. */
        VOLTS_AT_RAIL,
        /** The temperature stands at an end of its range. */
        CELSIUS_AT_RAIL,
        /** The temperature sensor is open. */
        SENSOR_OPEN
    }

    /** Nothing valid came from the board for the time allowed. */
    record Silence(long eventMillis) implements Entry {}

    /**
     * Readings are missing between the entry before and the one after.
     *
     * @param leastMillis the gap lasted at least so long; event time has moved on by this
     * @param mostMillis and at most so long
     */
    record Gap(long eventMillis, long leastMillis, long mostMillis) implements Entry {
        public Gap {
            if (leastMillis < 0 || mostMillis < leastMillis) {
                throw new IllegalArgumentException(
                        "a gap needs 0 <= least <= most, not " + leastMillis + " and " + mostMillis);
            }
        }
    }

    /** The board started anew; its loads opened. */
    record Reboot(long eventMillis) implements Entry {}

    /** The board's clock was found odd, or good again. */
    record ClockJudged(long eventMillis, boolean odd) implements Entry {}

    /** The board's lead check answered. */
    record LeadChecked(long eventMillis, LeadProof proof) implements Entry {
        public LeadChecked {
            requireNonNull(proof);
        }
    }

    /** What a lead check showed. */
    enum LeadProof {
        ATTACHED,
        OPEN,
        /** The board cannot or would not check. */
        NOT_DONE
    }

    /** A person did or decided something. */
    record Acted(long eventMillis, Act act) implements Entry {
        public Acted {
            requireNonNull(act);
        }
    }

    /** A person measured the cell's terminals with a meter. */
    record Metered(long eventMillis, double volts) implements Entry {}

    /**
     * A person announced work on this channel: relative limits pause until {@code untilMillis}, absolute trips do not.
     *
     * @param work which; empty where nobody said
     */
    record Announced(long eventMillis, long untilMillis, Optional<Work> work) implements Entry {
        public Announced {
            requireNonNull(work);
        }

        /** Work nobody says more about. */
        public Announced(long eventMillis, long untilMillis) {
            this(eventMillis, untilMillis, Optional.empty());
        }
    }

    /** What a person may be about to do at a channel. */
    enum Work {
        /** A short load or a meter's own pulse, to see the cell answer. */
        PROBE,
        /** Holding the sensor between two fingers: a sensor on its cell must warm. */
        TOUCH,
        /** Anything else with the hands: bonding, insulating, taping a sensor on. */
        HAND_WORK
    }

    /** The cell was moved to another channel. */
    record Moved(long eventMillis, String board, int channel) implements Entry {
        public Moved {
            requireNonNull(board);
        }
    }

    /** The channel's calibration changed; voltages before and after cannot be compared. */
    record CalibrationChanged(long eventMillis) implements Entry {}

    /** The passage is judged by another procedure from here on. */
    record ProcedureChanged(long eventMillis, Procedure procedure) implements Entry {
        public ProcedureChanged {
            requireNonNull(procedure);
        }
    }

    /**
     * The service went on with another version of the judge, which sees the passage in another phase.
     *
     * @param left the phase in which the earlier version left it
     */
    record JudgedAnew(long eventMillis, Phase left) implements Entry {
        public JudgedAnew {
            requireNonNull(left);
        }
    }

    /**
     * The load of the string this cell belongs to was opened for good; its cells finish singly.
     *
     * @param because the tag of the cell for which it was; empty where nobody said
     */
    record StringOpened(long eventMillis, Optional<String> because) implements Entry {
        public StringOpened {
            requireNonNull(because);
        }

        /** For no cell in particular. */
        public StringOpened(long eventMillis) {
            this(eventMillis, Optional.empty());
        }
    }

    /** Smoke was reported on the rack, and every load of it was opened. */
    record Smoke(long eventMillis) implements Entry {}

    /**
     * A cell that left its string is to finish on this load of its own.
     *
     * @param ohms above 0
     * @param switched whether its channel's switch closes it; otherwise hands do
     */
    record OwnLoad(long eventMillis, double ohms, boolean switched) implements Entry {
        public OwnLoad {
            if (!(ohms > 0) || Double.isInfinite(ohms)) {
                throw new IllegalArgumentException("a load in ohms must be a number above 0, not " + ohms);
            }
        }
    }
}
