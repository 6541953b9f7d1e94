package org.ebbwatch.sizing;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Resistors wired to one load of two ends. */
public sealed interface Network {
    /** At most so many resistors make one load: more of them are more joints that come off. */
    int MOST_PIECES = 4;

    /** Resistance from end to end. */
    double ohms();

    /** Every resistor with the power it carries while so many volts lie across the whole. */
    List<Carried> carried(double volts);

    /** How it is wired, such as "22 ohm 10 W in parallel with (10 ohm 10 W in series with 12 ohm 5 W)". */
    String words();

    /** How many resistors it takes. */
    default int pieces() {
        return carried(0).size();
    }

    /** One resistor and what it carries. */
    record Carried(Resistor resistor, double watts) {}

    /** One resistor. */
    record Single(Resistor resistor) implements Network {
        @Override
        public double ohms() {
            return resistor.ohms();
        }

        @Override
        public List<Carried> carried(double volts) {
            return List.of(new Carried(resistor, volts * volts / resistor.ohms()));
        }

        @Override
        public String words() {
            return resistor.words();
        }
    }

    /** One after the other: the same current flows through all. */
    record Series(List<Network> parts) implements Network {
        public Series {
            parts = List.copyOf(parts);
        }

        @Override
        public double ohms() {
            return parts.stream().mapToDouble(Network::ohms).sum();
        }

        @Override
        public List<Carried> carried(double volts) {
            double amperes = volts / ohms();
            return parts.stream()
                    .flatMap(part -> part.carried(amperes * part.ohms()).stream())
                    .toList();
        }

        @Override
        public String words() {
            return joined(parts, " in series with ", Parallel.class);
        }
    }

    /** Side by side: the same voltage lies across all. */
    record Parallel(List<Network> parts) implements Network {
        public Parallel {
            parts = List.copyOf(parts);
        }

        @Override
        public double ohms() {
            return 1 / parts.stream().mapToDouble(part -> 1 / part.ohms()).sum();
        }

        @Override
        public List<Carried> carried(double volts) {
            return parts.stream().flatMap(part -> part.carried(volts).stream()).toList();
        }

        @Override
        public String words() {
            return joined(parts, " in parallel with ", Series.class);
        }
    }

    /** Two in series, flattened. */
    static Network inSeries(Network one, Network other) {
        return new Series(Stream.of(one, other)
                .flatMap(it -> it instanceof Series series ? series.parts().stream() : Stream.of(it))
                .toList());
    }

    /** Two in parallel, flattened. */
    static Network inParallel(Network one, Network other) {
        return new Parallel(Stream.of(one, other)
                .flatMap(it -> it instanceof Parallel parallel ? parallel.parts().stream() : Stream.of(it))
                .toList());
    }

    private static String joined(List<Network> parts, String by, Class<? extends Network> bracketed) {
        return parts.stream()
                .map(part -> bracketed.isInstance(part) ? '(' + part.words() + ')' : part.words())
                .collect(Collectors.joining(by));
    }
}
