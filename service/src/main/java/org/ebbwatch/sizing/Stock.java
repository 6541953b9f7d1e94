package org.ebbwatch.sizing;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where resistors come from. */
public sealed interface Stock {

    /** Every load that can be made and may serve a target of so many ohms. */
    List<Network> candidates(double targetOhms, boolean atLeast);

    /**
     * They are bought: any value of a series.
     *
     * @param ratedWatts only this rating; empty: whatever serves
     */
    record Bought(PreferredSeries series, ResistorBuild build, Optional<Double> ratedWatts) implements Stock {
        private static final double[] RATINGS = {0.25, 0.5, 1, 2, 3, 5, 10, 17, 25, 50, 100, 200};

        public Bought {
            requireNonNull(series);
            requireNonNull(build);
            ratedWatts.ifPresent(watts -> Ranges.require("watts", watts, Resistor.LEAST_WATTS, Resistor.MOST_WATTS));
        }

        @Override
        public List<Network> candidates(double targetOhms, boolean atLeast) {
            DoubleUnaryOperator nearest = atLeast ? series::atLeast : series::atMost;
            List<Network> all = new ArrayList<>();
            double[] ratings = ratedWatts.map(watts -> new double[] {watts}).orElse(RATINGS);
            for (double watts : ratings) {
                all.add(alike(nearest, targetOhms, 1, 1, watts));
            }
            if (ratedWatts.isPresent()) {
                for (int count = 2; count <= Network.MOST_PIECES; count++) {
                    all.add(alike(nearest, targetOhms, count, 1, ratedWatts.get()));
                    all.add(alike(nearest, targetOhms, 1, count, ratedWatts.get()));
                }
                all.add(alike(nearest, targetOhms, 2, 2, ratedWatts.get()));
            }
            return all;
        }

        private Network alike(
                DoubleUnaryOperator nearest, double targetOhms, int inSeries, int inParallel, double watts) {
            double each = nearest.applyAsDouble(targetOhms * inParallel / inSeries);
            Network row = new Network.Single(new Resistor(each, watts, build));
            Network rowOfAll = row;
            for (int i = 1; i < inSeries; i++) {
                rowOfAll = Network.inSeries(rowOfAll, row);
            }
            Network whole = rowOfAll;
            for (int i = 1; i < inParallel; i++) {
                whole = Network.inParallel(whole, rowOfAll);
            }
            return whole;
        }
    }

    /** They lie in a drawer: what is there, and no more of it. */
    record Drawer(List<Kind> kinds) implements Stock {
        /** Most kinds of resistors in a drawer: four of more make too many loads to try. */
        public static final int MOST_KINDS = 12;

        private static final Pattern ENTRY =
                Pattern.compile("\\s*(\\d{1,6}(?:\\.\\d{1,3})?):(\\d{1,4}(?:\\.\\d{1,3})?)(?::(\\d{1,4}))?\\s*");

        /** So many of one kind. */
        public record Kind(Resistor resistor, int count) {
            public Kind {
                Ranges.require("count", count, 1, 1_000);
            }
        }

        /**
         * Reads a list such as "22:10, 10:5:4": 22 ohm of 10 W, and four of 10 ohm and 5 W.
         *
         * @throws IllegalArgumentException if it is no such list; the message says what it takes
         */
        public static Drawer of(String list, ResistorBuild build) {
            List<Kind> kinds = new ArrayList<>();
            for (String entry : list.split(",", -1)) {
                Matcher parts = ENTRY.matcher(entry);
                if (!parts.matches()) {
                    throw new IllegalArgumentException(
                            "the drawer takes OHMS:WATTS or OHMS:WATTS:COUNT, separated by commas,"
                                    + " such as 22:10,10:5:4; \"" + shortened(entry.strip()) + "\" is neither");
                }
                var resistor =
                        new Resistor(Double.parseDouble(parts.group(1)), Double.parseDouble(parts.group(2)), build);
                kinds.add(new Kind(resistor, parts.group(3) == null ? 1 : Integer.parseInt(parts.group(3))));
            }
            return new Drawer(kinds);
        }

        private static String shortened(String text) {
            return text.length() <= 40 ? text : text.substring(0, 40) + "...";
        }

        public Drawer {
            kinds = List.copyOf(kinds);
            Ranges.require("kinds of resistors in the drawer", kinds.size(), 1, MOST_KINDS);
        }

        @Override
        public List<Network> candidates(double targetOhms, boolean atLeast) {
            return new Combinations(kinds)
                    .all().stream()
                            .filter(network -> atLeast
                                    ? network.ohms() >= targetOhms * (1 - 1e-9)
                                    : network.ohms() <= targetOhms * (1 + 1e-9))
                            .toList();
        }
    }
}
