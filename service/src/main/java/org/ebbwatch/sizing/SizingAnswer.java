package org.ebbwatch.sizing;

import java.util.List;

/** What becomes of a wish. */
public sealed interface SizingAnswer {

    /** Not like that; every reason there is. */
    record Refused(List<Refusal> reasons) implements SizingAnswer {
        public Refused {
            reasons = List.copyOf(reasons);
            if (reasons.isEmpty()) {
                throw new IllegalArgumentException("a refusal has a reason");
            }
        }
    }

    /**
     * A load.
     *
     * @param volts across the load in the first moment: those measured at rest, so that what follows errs to the warm side
     * @param perHour share of the rated capacity an hour, in the first moment
     * @param pieces its resistors and how warm they get
     * @param gauge of the wire
     * @param wireVolts lost along the wire in the first moment
     * @param landmarks 2.5, 0.5 and 0.1 V a cell, in that order
     * @param heldWattHours what the whole holds now, down to 0 V
     * @param loadWattHours of it, what becomes heat in the load down to 0.1 V
     * @param cellWattHours what becomes heat inside the cells meanwhile
     * @param rackWatts of all loads together in the first moment
     * @param atOnce how many the room bears
     */
    record Sized(
            LoadWish wish,
            Network network,
            double volts,
            double amperes,
            double watts,
            double perHour,
            List<Piece> pieces,
            WireGauge gauge,
            double wireVolts,
            List<Landmark> landmarks,
            double heldWattHours,
            double loadWattHours,
            double cellWattHours,
            double rackWatts,
            int atOnce)
            implements SizingAnswer {
        public Sized {
            pieces = List.copyOf(pieces);
            landmarks = List.copyOf(landmarks);
        }

        /** The piece that is nearest to what it may carry. */
        public Piece hardest() {
            return pieces.stream()
                    .max((a, b) -> Double.compare(a.share(), b.share()))
                    .orElseThrow();
        }

        /** The warmest piece. */
        public Piece warmest() {
            return pieces.stream()
                    .max((a, b) -> Double.compare(a.celsius(), b.celsius()))
                    .orElseThrow();
        }

        /** What a person must know besides the numbers. */
        public List<String> cautions() {
            return SizingCautions.of(this);
        }

        /** Every number with where it comes from, in plain words. */
        public List<Explained> explained() {
            return SizingWords.of(this);
        }
    }

    /**
     * One resistor at work.
     *
     * @param watts in the first moment
     * @param mayCarryWatts where it stands
     * @param celsius of its surface in the first hour
     */
    record Piece(Resistor resistor, double watts, double mayCarryWatts, double celsius) {
        /** Share of what it may carry. */
        public double share() {
            return watts / mayCarryWatts;
        }

        /** What its surface does to skin. */
        public Touch touch() {
            return Touch.at(celsius);
        }
    }

    /**
     * When the terminals show so many volts a cell under the load.
     *
     * @param hours since the load was put on
     * @param ampereHours taken out by then
     */
    record Landmark(double volts, double hours, double ampereHours) {}

    /**
     * A number and where it comes from.
     *
     * @param name of what
     * @param value with its unit
     * @param why in a sentence
     */
    record Explained(String name, String value, String why) {}
}
