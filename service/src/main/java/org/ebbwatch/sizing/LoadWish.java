package org.ebbwatch.sizing;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import org.ebbwatch.intake.rule.CellChemistry;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.ProtectionBoard;

/**
 * A cell, or a pack of cells in series, and the load somebody wishes for it.
 *
 * @param packVolts measured now, at rest, across the whole; above 0, at most 500
 * @param ratedAmpereHours of one cell, 0.01 to 1000
 * @param cellsInSeries 1 to 100
 * @param balanceLeads whether each cell of the pack has a lead of its own
 * @param surroundings where it is going to stand
 * @param cells how many such cells or packs stand on the rack, 1 to 1000
 */
public record LoadWish(
        CellChemistry chemistry,
        double packVolts,
        double ratedAmpereHours,
        int cellsInSeries,
        boolean balanceLeads,
        Condition condition,
        ProtectionBoard protectionBoard,
        Pace pace,
        Stock stock,
        Surroundings surroundings,
        int cells) {
    public LoadWish {
        requireNonNull(chemistry);
        requireNonNull(condition);
        requireNonNull(protectionBoard);
        requireNonNull(pace);
        requireNonNull(stock);
        requireNonNull(surroundings);
        Ranges.require("volts", packVolts, 0, 500);
        Ranges.require("ampere hours", ratedAmpereHours, 0.01, 1_000);
        Ranges.require("cells in series", cellsInSeries, 1, 100);
        Ranges.require("cells on the rack", cells, 1, 1_000);
    }

    /** Volts of one cell if all are alike. */
    double cellVolts() {
        return packVolts / cellsInSeries;
    }

    /** The resistance at which the first moment has this rate, ohms. */
    double ohmsAtRate(double perHour) {
        return packVolts / (perHour * ratedAmpereHours);
    }

    /**
     * Where the load stands and how it is wired.
     *
     * @param airCelsius of the air around it, -20 to 60
     * @param wire its gauge; empty: sizing names one
     * @param wireMetres from cell to load, there and back, 0 to 100
     */
    public record Surroundings(
            double airCelsius, Mounting mounting, Optional<WireGauge> wire, double wireMetres, Room room) {
        public Surroundings {
            requireNonNull(mounting);
            requireNonNull(wire);
            requireNonNull(room);
            Ranges.require("air in degrees Celsius", airCelsius, -20, 60);
            Ranges.require("metres of wire", wireMetres, 0, 100);
        }
    }
}
