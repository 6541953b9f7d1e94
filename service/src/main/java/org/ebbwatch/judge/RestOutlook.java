package org.ebbwatch.judge;

import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.judge.estimate.RestCurve;
import org.ebbwatch.judge.estimate.RestFit;
import org.ebbwatch.judge.estimate.RestForecast;
import org.ebbwatch.judge.procedure.Procedure;

/**
 * What a resting cell comes back to, foretold twice over: after 10, 20, 40 minutes and so on by an interval that holds the end
 * in 95 of 100 nights, and after 1, 2, 4, 8 and 16 hours by what must come at least. Either may send a cell back, none can pass
 * one: that it will stay below the limit is nowhere concluded.
 */
final class RestOutlook {
    /** What an average that takes an eighth of each new reading leaves of the noise: sqrt(1 / 15). */
    private static final double SMOOTHED = 0.26;
    /** Expanded uncertainty of a difference over the deviation of one reading: 2 sqrt(2). */
    private static final double DIFFERENCE = 2.83;

    private static final int HALVINGS = 10;

    private final RestForecast atLeast = new RestForecast();
    private final RestCurve curve = new RestCurve();

    /**
     * The cell will be over its limit.
     *
     * @param volts at the end of the rest, at least
     * @param limitAfterMillis when it reaches the limit, since the load came off
     * @param sure how sure that is, in a few words
     */
    record Outlook(double volts, long limitAfterMillis, String sure) {}

    /** @param millis when the load came off; where nobody saw that, of the first reading */
    RestOutlook(long millis) {
        atLeast.begin(millis);
        curve.begin(millis);
    }

    /** Levels before and after cannot be compared. */
    void forget() {
        atLeast.forget();
        curve.forget();
    }

    /** Follows one reading; empty unless it must lead over the limit within this rest. */
    Optional<Outlook> follow(Reading now, double smoothVolts, Procedure.Rest rest) {
        boolean leastDue = atLeast.add(now.atMillis(), smoothVolts);
        boolean curveDue = curve.add(now.atMillis(), now.volts());
        double deviation = now.differenceVolts() / DIFFERENCE;
        Optional<Outlook> least = leastDue ? least(now, rest, deviation) : Optional.empty();
        return least.isPresent() || !curveDue ? least : interval(now, rest, deviation);
    }

    private Optional<Outlook> least(Reading now, Procedure.Rest rest, double deviation) {
        double expanded = now.expandedVolts();
        return atLeast.forecast(rest.limitVolts() - expanded, rest.leastMillis(), SMOOTHED * deviation)
                .filter(to -> to.volts() - expanded > rest.limitVolts())
                .map(to -> new Outlook(to.volts(), to.limitAfterMillis(), "at least"));
    }

    private Optional<Outlook> interval(Reading now, Procedure.Rest rest, double deviation) {
        double over = rest.limitVolts() + now.expandedVolts();
        return fit(rest.leastMillis(), deviation)
                .filter(to -> to.lowestVolts() > over)
                .map(to -> new Outlook(
                        to.lowestVolts(),
                        reaches(rest, deviation),
                        String.format(
                                Locale.ROOT, "95 %% sure of %.3f to %.3f V", to.lowestVolts(), to.highestVolts())));
    }

    /** When the likeliest curve is at the limit. */
    private long reaches(Procedure.Rest rest, double deviation) {
        long before = 0;
        long after = rest.leastMillis();
        for (int halving = 0; halving < HALVINGS; halving++) {
            long middle = (before + after) / 2;
            boolean under = fit(middle, deviation)
                    .map(to -> to.volts() < rest.limitVolts())
                    .orElse(true);
            before = under ? middle : before;
            after = under ? after : middle;
        }
        return after;
    }

    private Optional<RestFit> fit(long untilMillis, double deviation) {
        return RestFit.of(curve, untilMillis / 1000.0, deviation);
    }
}
