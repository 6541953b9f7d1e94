package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import java.util.Map;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmRates;
import org.ebbwatch.judge.FindingKind.Urgency;

/**
 * How often alarms were raised, held against the figures usual for one person.
 *
 * @param from the stretch that was looked at begins
 * @param to it ends
 * @param raised how many were raised in it
 * @param perHour in the mean
 * @param busiestAt when the ten minutes began in which most were
 * @param busiestRaised how many were raised in those ten minutes
 * @param standing how many stand now
 * @param stale how many of them have stood for more than 24 h
 * @param kinds how often each kind was raised, most frequent first
 * @param urgencies how often each urgency was
 * @param guides the figures they are held against
 */
@Serdeable
public record AlarmRatesAnswer(
        @Nullable String from,
        @Nullable String to,
        int raised,
        @Nullable Double perHour,
        @Nullable String busiestAt,
        int busiestRaised,
        int standing,
        int stale,
        List<KindCount> kinds,
        List<UrgencyCount> urgencies,
        List<GuideAnswer> guides) {

    /** How often a kind of alarm was raised, and its share of all, 0 to 1. */
    @Serdeable
    public record KindCount(AlarmKind kind, int raised, @Nullable Double share) {}

    /** How often alarms of an urgency were raised, and their share of all, 0 to 1. */
    @Serdeable
    public record UrgencyCount(Urgency urgency, int raised, @Nullable Double share) {}

    /**
     * A figure that alarms are held against.
     *
     * @param what which
     * @param most the figure; EEMUA 191, from memory
     * @param found what was found
     * @param kept whether it is not above that
     */
    @Serdeable
    public record GuideAnswer(String what, double most, @Nullable Double found, boolean kept) {}

    /** The rates as they are told. */
    public static AlarmRatesAnswer of(AlarmRates rates) {
        return new AlarmRatesAnswer(
                Figures.wallTime(rates.fromWallMillis()),
                Figures.wallTime(rates.toWallMillis()),
                rates.raised(),
                Figures.coarse(rates.perHour()),
                Figures.wallTime(rates.busiest().fromWallMillis()),
                rates.busiest().raised(),
                rates.standing(),
                rates.stale(),
                rates.kinds().stream()
                        .map(often -> new KindCount(often.kind(), often.raised(), share(often.raised(), rates)))
                        .toList(),
                rates.urgencies().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(entry ->
                                new UrgencyCount(entry.getKey(), entry.getValue(), share(entry.getValue(), rates)))
                        .toList(),
                rates.guides().stream()
                        .map(guide -> new GuideAnswer(
                                guide.what(), guide.most(), Figures.coarse(guide.found()), guide.isKept()))
                        .toList());
    }

    @Nullable private static Double share(int raised, AlarmRates rates) {
        return Figures.coarse(raised / (double) rates.raised());
    }
}
