package org.ebbwatch.sizing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.intake.rule.ProtectionBoard;
import org.ebbwatch.intake.rule.Voltage;
import org.ebbwatch.sizing.Discharge.Reached;
import org.ebbwatch.sizing.SizingAnswer.Landmark;
import org.ebbwatch.sizing.SizingAnswer.Piece;
import org.ebbwatch.sizing.SizingAnswer.Refused;
import org.ebbwatch.sizing.SizingAnswer.Sized;

/** Names a load for a wish, or says why it does not. The same wish always gets the same answer. */
public final class LoadSizing {
    /** Landmarks under the load, volts a cell. */
    public static final List<Double> LANDMARKS = List.of(2.5, 0.5, 0.1);

    /** Resistors are taken so large that they carry at most this share of what they may (common practice, no source). */
    public static final double EASE = 0.5;

    private static final double HAIR = 1e-9;
    private static final double ALIKE = 0.15;
    private static final double MOST_OHMS = 1e6;

    private final LoadWish wish;
    private final Discharge discharge;
    private final double leastOhms;

    private LoadSizing(LoadWish wish) {
        this.wish = wish;
        AgedCell cell = AgedCell.ofLabel(wish.chemistry().judged(), wish.ratedAmpereHours());
        this.discharge = new Discharge(cell, cell.openCircuit().stateOfCharge(wish.cellVolts()));
        this.leastOhms = wish.ohmsAtRate(fastest());
    }

    /** The load for a wish. */
    public static SizingAnswer size(LoadWish wish) {
        List<Refusal> dangerous = dangers(wish);
        return dangerous.isEmpty() ? new LoadSizing(wish).answer() : new Refused(dangerous);
    }

    private static List<Refusal> dangers(LoadWish wish) {
        List<Refusal> dangers = new ArrayList<>();
        if (!wish.condition().isForARack()) {
            dangers.add(new Refusal.NotForARack(wish.condition()));
        }
        if (wish.protectionBoard() == ProtectionBoard.PRESENT) {
            dangers.add(new Refusal.BoardPresent());
        }
        if (wish.cellsInSeries() > 1 && !wish.balanceLeads()) {
            dangers.add(new Refusal.NoBalanceLeads(wish.cellsInSeries()));
        }
        if (wish.cellVolts() > wish.chemistry().highestVolts()) {
            dangers.add(new Refusal.TooManyVolts(wish.chemistry(), wish.cellsInSeries(), wish.cellVolts()));
        }
        if (wish.cellVolts() < Voltage.SHOWS_NOTHING_VOLTS) {
            dangers.add(new Refusal.ShowsNothing(wish.cellVolts()));
        }
        return dangers;
    }

    private SizingAnswer answer() {
        boolean within = wish.pace() instanceof Pace.Within;
        double target = wish.pace() instanceof Pace.Within by
                ? ohmsFor(by.hours())
                : wish.ohmsAtRate(((Pace.Rate) wish.pace()).perHour());
        if (target < leastOhms * (1 - HAIR)) {
            return new Refused(List.of(new Refusal.TooFast(
                    wish.condition(),
                    wish.packVolts() / target / wish.ratedAmpereHours(),
                    fastest(),
                    until(leastOhms, 0.1).hours())));
        }
        Optional<Network> best = wish.stock().candidates(target, !within).stream()
                .filter(network -> network.ohms() >= leastOhms * (1 - HAIR))
                .min(fitness(target));
        if (best.isEmpty()) {
            return new Refused(List.of(
                    new Refusal.NothingFits(within ? leastOhms : target, within ? target : Double.POSITIVE_INFINITY)));
        }
        Optional<Refusal> tooMuch = tooMuch(best.get());
        return tooMuch.isPresent() ? new Refused(List.of(tooMuch.get())) : sized(best.get());
    }

    private double fastest() {
        return wish.condition().fastestRate().orElseThrow();
    }

    private Reached until(double ohms, double cellVolts) {
        return discharge.until(ohms / wish.cellsInSeries(), cellVolts);
    }

    /** The resistance that takes so long to 0.1 V: time grows with resistance, so it is halved in on. */
    private double ohmsFor(double hours) {
        double low = 0;
        double high = MOST_OHMS;
        for (int halving = 0; halving < 60; halving++) {
            double middle = (low + high) / 2;
            if (until(middle, 0.1).hours() < hours) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** At ease before near its limit, near the target before far, few resistors before many, small before large. */
    private Comparator<Network> fitness(double target) {
        return Comparator.comparingInt((Network network) -> strain(network))
                .thenComparingDouble(network -> Math.floor(off(network, target) / ALIKE))
                .thenComparingInt(Network::pieces)
                .thenComparingDouble(network -> off(network, target))
                .thenComparingDouble(LoadSizing::ratedWatts);
    }

    private int strain(Network network) {
        double share = pieces(network).stream().mapToDouble(Piece::share).max().orElseThrow();
        if (share <= EASE) {
            return 0;
        }
        return share <= 1 ? 1 : 2;
    }

    private static double off(Network network, double target) {
        return Math.abs(StrictMath.log(network.ohms() / target));
    }

    private static double ratedWatts(Network network) {
        return network.carried(0).stream()
                .mapToDouble(piece -> piece.resistor().ratedWatts())
                .sum();
    }

    private List<Piece> pieces(Network network) {
        Mounting mounting = wish.surroundings().mounting();
        double air = wish.surroundings().airCelsius();
        return network.carried(wish.packVolts()).stream()
                .map(carried -> {
                    Resistor resistor = carried.resistor();
                    double rated = resistor.ratedWatts();
                    return new Piece(
                            resistor,
                            carried.watts(),
                            resistor.build().mayCarry(rated, mounting, air),
                            resistor.build().surfaceCelsius(carried.watts(), rated, mounting, air));
                })
                .toList();
    }

    private Optional<Refusal> tooMuch(Network network) {
        Optional<Piece> over =
                pieces(network).stream().filter(piece -> piece.share() > 1).findFirst();
        if (over.isPresent()) {
            return over.map(piece -> new Refusal.OverRating(
                    network.words(),
                    piece.watts(),
                    piece.mayCarryWatts(),
                    wish.surroundings().airCelsius()));
        }
        double amperes = wish.packVolts() / network.ohms();
        Optional<WireGauge> gauge = wish.surroundings()
                .wire()
                .or(() -> WireGauge.enoughFor(amperes))
                .or(() -> Optional.of(WireGauge.AWG_18));
        return gauge.filter(it -> it.mayCarryAmperes() < amperes).map(it -> new Refusal.WireTooThin(it, amperes));
    }

    private Sized sized(Network network) {
        double volts = wish.packVolts();
        double amperes = volts / network.ohms();
        double watts = volts * amperes;
        WireGauge gauge = wish.surroundings()
                .wire()
                .or(() -> WireGauge.enoughFor(amperes))
                .orElseThrow();
        Reached end = until(network.ohms(), LANDMARKS.get(LANDMARKS.size() - 1));
        return new Sized(
                wish,
                network,
                volts,
                amperes,
                watts,
                amperes / wish.ratedAmpereHours(),
                pieces(network),
                gauge,
                amperes * gauge.ohmsPerMetre() * wish.surroundings().wireMetres(),
                LANDMARKS.stream()
                        .map(landmark -> landmark(network.ohms(), landmark))
                        .toList(),
                wish.cellsInSeries() * discharge.heldWattHours(),
                wish.cellsInSeries() * end.loadWattHours(),
                wish.cellsInSeries() * end.cellWattHours(),
                wish.cells() * watts,
                wish.surroundings().room().bears(watts));
    }

    private Landmark landmark(double ohms, double cellVolts) {
        Reached reached = until(ohms, cellVolts);
        return new Landmark(cellVolts, reached.hours(), reached.ampereHours());
    }
}
