package org.ebbwatch.sizing;

import static org.ebbwatch.sizing.Ranges.plain;

import org.ebbwatch.intake.rule.CellChemistry;
import org.ebbwatch.intake.rule.Condition;

/** Why no load is named for a wish: it is dangerous, or cannot be. */
public sealed interface Refusal {

    /** What is the matter, in sentences. */
    String why();

    /** What to do instead, in sentences. */
    String instead();

    /** A cell in that condition is not discharged on a rack. */
    record NotForARack(Condition condition) implements Refusal {
        @Override
        public String why() {
            return "A cell that is " + condition.words() + " is not put on a load: " + condition.danger();
        }

        @Override
        public String instead() {
            return condition.practice();
        }
    }

    /** A protection board is in front of it. */
    record BoardPresent() implements Refusal {
        @Override
        public String why() {
            return "A protection board opens its switch at some 2.4 V: the terminals then show 0 V while the cell behind it holds"
                    + " enough to burn. Through it no load ever empties a cell.";
        }

        @Override
        public String instead() {
            return "Take the board off first, cutting one lead at a time: both at once is a short.";
        }
    }

    /** Cells in series that nobody can see singly. */
    record NoBalanceLeads(int cellsInSeries) implements Refusal {
        @Override
        public String why() {
            return "In a string of " + cellsInSeries
                    + " cells the weakest is empty first and the others then drive it below"
                    + " 0 V: it is reversed, and may short inside. Without a lead to each cell nobody sees it.";
        }

        @Override
        public String instead() {
            return "Take the pack apart and empty each cell singly, or bring out a lead of every cell and say so"
                    + " (balance leads).";
        }
    }

    /** No sound cell shows that much. */
    record TooManyVolts(CellChemistry chemistry, int cellsInSeries, double cellVolts) implements Refusal {
        @Override
        public String why() {
            return plain(cellVolts) + " V a cell is more than any " + chemistry.key() + " cell may show ("
                    + plain(chemistry.highestVolts()) + " V): the number in series or the chemistry is wrong, or it was"
                    + " overcharged.";
        }

        @Override
        public String instead() {
            return "Count and measure again. An overcharged cell is unstable: set it apart and do not empty it on a rack.";
        }
    }

    /** Hardly anything at the terminals: there is nothing to size. */
    record ShowsNothing(double cellVolts) implements Refusal {
        @Override
        public String why() {
            return plain(cellVolts)
                    + " V a cell: it is dead on arrival, or something is open between its terminals and you."
                    + " What it holds cannot be told from that, so no time can.";
        }

        @Override
        public String instead() {
            return "Measure at the cell's own terminals. If it stays so put no load on it: docs/check-in.md says what becomes of a"
                    + " cell that is dead on arrival.";
        }
    }

    /**
     * Faster than such a cell is emptied.
     *
     * @param perHour asked for, in the first moment
     * @param soonestHours to 0.1 V at the fastest allowed
     */
    record TooFast(Condition condition, double perHour, double fastestPerHour, double soonestHours) implements Refusal {
        @Override
        public String why() {
            return "That begins at C/" + plain(1 / perHour) + ". A cell that is " + condition.words()
                    + " is emptied at C/" + plain(1 / fastestPerHour)
                    + " or slower here: faster warms it, and what was taken"
                    + " out too fast comes back at rest.";
        }

        @Override
        public String instead() {
            return "Wish for C/" + plain(1 / fastestPerHour) + " or slower, or for " + plain(soonestHours)
                    + " h or longer to 0.1 V.";
        }
    }

    /** No resistor there is comes close. */
    record NothingFits(double fromOhms, double toOhms) implements Refusal {
        @Override
        public String why() {
            return "No load of up to " + Network.MOST_PIECES + " of these resistors has "
                    + (Double.isInfinite(toOhms)
                            ? plain(fromOhms) + " ohm or more."
                            : plain(fromOhms) + " to " + plain(toOhms) + " ohm.");
        }

        @Override
        public String instead() {
            return "Add resistors to the list, take the finer series E96, or wish for a slower discharge.";
        }
    }

    /** The best there is would burn. */
    record OverRating(String network, double watts, double mayCarryWatts, double airCelsius) implements Refusal {
        @Override
        public String why() {
            return "Of " + network + " one would carry " + plain(watts)
                    + " W in the first moment; where it stands, in air of " + plain(airCelsius)
                    + " degrees, it may carry " + plain(mayCarryWatts) + " W.";
        }

        @Override
        public String instead() {
            return "Take resistors of a higher rating, more of them, a heatsink for aluminium housings, or a slower discharge.";
        }
    }

    /** The wire would get warm. */
    record WireTooThin(WireGauge gauge, double amperes) implements Refusal {
        @Override
        public String why() {
            return "AWG " + gauge.number() + " may carry " + plain(gauge.mayCarryAmperes()) + " A in a bundle; "
                    + plain(amperes) + " A would flow.";
        }

        @Override
        public String instead() {
            return WireGauge.enoughFor(amperes)
                    .map(enough -> "Take AWG " + enough.number() + " or thicker.")
                    .orElse("Take a slower discharge: none of the gauges here carries that.");
        }
    }
}
