package org.ebbwatch.alarm.book;

import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * How often alarms were raised over a stretch of time: whether people can still heed them. Wall times are labels; where the clock
 * stepped, rates are wrong around it.
 *
 * @param fromWallMillis the stretch begins
 * @param toWallMillis it ends; later than it begins
 * @param raised how many were raised in it
 * @param busiest the ten minutes in which most were
 * @param floodShare share of its whole ten-minute slots in which more than ten were raised, 0 to 1
 * @param standing how many stand now
 * @param stale how many of them have stood for more than 24 h
 * @param kinds how often each kind was raised, most frequent first; those that were not are left out
 * @param urgencies how often each urgency was
 */
public record AlarmRates(
        long fromWallMillis,
        long toWallMillis,
        int raised,
        Busiest busiest,
        double floodShare,
        int standing,
        int stale,
        List<Often> kinds,
        Map<Urgency, Integer> urgencies) {
    private static final long TEN_MINUTES = 600_000;
    private static final long HOUR = 3_600_000;
    private static final long DAY = 24 * HOUR;
    private static final int FLOOD = 10;

    public AlarmRates {
        kinds = List.copyOf(kinds);
        urgencies = Map.copyOf(urgencies);
    }

    /** Ten minutes, the moment they begin, and how many alarms were raised in them; none: at the beginning of the stretch. */
    public record Busiest(long fromWallMillis, int raised) {}

    /** How often a kind was raised. */
    public record Often(AlarmKind kind, int raised) {}

    /**
     * A figure that alarms are held against.
     *
     * @param what which
     * @param most the figure
     * @param found what was found
     */
    public record Guide(String what, double most, double found) {
        public boolean isKept() {
            return found <= most;
        }
    }

    /**
     * The rates.
     *
     * @param raised what was raised; what lies outside of the stretch is left out
     * @param standingSinceWallMillis since when those that stand now do
     */
    public static AlarmRates of(
            Collection<Raised> raised,
            Collection<Long> standingSinceWallMillis,
            long fromWallMillis,
            long toWallMillis) {
        List<Raised> within = raised.stream()
                .filter(each -> each.wallMillis() >= fromWallMillis && each.wallMillis() < toWallMillis)
                .toList();
        long[] moments = within.stream().mapToLong(Raised::wallMillis).sorted().toArray();
        return new AlarmRates(
                fromWallMillis,
                toWallMillis,
                within.size(),
                busiest(moments, fromWallMillis),
                floodShare(moments, fromWallMillis, toWallMillis),
                standingSinceWallMillis.size(),
                (int) standingSinceWallMillis.stream()
                        .filter(since -> toWallMillis - since > DAY)
                        .count(),
                counted(within, Raised::kind, AlarmKind.class).entrySet().stream()
                        .map(entry -> new Often(entry.getKey(), entry.getValue()))
                        .sorted(Comparator.comparing(Often::raised, Comparator.reverseOrder()))
                        .toList(),
                counted(within, each -> each.kind().urgency(), Urgency.class));
    }

    private static <E extends Enum<E>> Map<E, Integer> counted(
            List<Raised> raised, Function<Raised, E> by, Class<E> type) {
        return raised.stream()
                .collect(Collectors.groupingBy(by, () -> new EnumMap<>(type), Collectors.summingInt(each -> 1)));
    }

    private static Busiest busiest(long[] moments, long fromWallMillis) {
        var busiest = new Busiest(fromWallMillis, 0);
        int first = 0;
        for (int last = 0; last < moments.length; last++) {
            while (moments[last] - moments[first] >= TEN_MINUTES) {
                first++;
            }
            if (last - first + 1 > busiest.raised()) {
                busiest = new Busiest(moments[first], last - first + 1);
            }
        }
        return busiest;
    }

    private static double floodShare(long[] moments, long fromWallMillis, long toWallMillis) {
        int slots = (int) Math.max(1, (toWallMillis - fromWallMillis) / TEN_MINUTES);
        int[] counts = new int[slots];
        for (long moment : moments) {
            counts[(int) Math.min(slots - 1, (moment - fromWallMillis) / TEN_MINUTES)]++;
        }
        return Arrays.stream(counts).filter(count -> count > FLOOD).count() / (double) slots;
    }

    /** Mean alarms an hour. */
    public double perHour() {
        return raised * (double) HOUR / (toWallMillis - fromWallMillis);
    }

    /** The figures of EEMUA 191 for one person (from memory). */
    public List<Guide> guides() {
        return List.of(
                new Guide("alarms a day", 150, perHour() * 24),
                new Guide("alarms in the busiest ten minutes", FLOOD, busiest.raised()),
                new Guide("per cent of the time in a flood", 1, floodShare * 100),
                new Guide("alarms that have stood for more than 24 h", 5, stale));
    }
}
