package org.ebbwatch.morning;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.morning.MorningReport.AlarmLine;
import org.ebbwatch.morning.MorningReport.CellLine;
import org.ebbwatch.morning.MorningReport.Gap;
import org.ebbwatch.plan.Errand;

/** A morning report as plain text: for a terminal, and for a mail. */
public final class MorningText {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM yyyy HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final int WEEK_DAYS = 6;
    private static final int MOST_LINES = 40;
    private static final String CAUTION =
            """
            This is a second pair of eyes, no safety device. Look at the cells before you touch them; your local code
            and your emergency plan come first.
            """;

    private final MorningReport report;
    private final ZoneId zone;
    private final LocalDate today;

    private MorningText(MorningReport report, ZoneId zone) {
        this.report = report;
        this.zone = zone;
        this.today = at(report.wallMillis()).toLocalDate();
    }

    /** The whole text. */
    public static String of(MorningReport report, ZoneId zone) {
        return new MorningText(report, zone).whole();
    }

    /** The same in one line: what a person must know before he reads on. */
    public static String inShort(MorningReport report) {
        long needy = report.cells().stream().filter(CellLine::needsSomebody).count();
        long rang = report.alarms().stream()
                .filter(alarm -> alarm.wallMillis() >= report.sinceWallMillis())
                .count();
        long open = report.alarms().stream()
                .filter(alarm -> alarm.state().isUnacknowledged())
                .count();
        List<String> said = new ArrayList<>();
        said.add(
                needy == 0
                        ? "No cell needs somebody now."
                        : number(needy, "cell needs", "cells need") + " somebody now.");
        said.add(rang == 0 ? "No alarm was raised." : number(rang, "alarm was", "alarms were") + " raised.");
        if (open > 0) {
            said.add(number(open, "alarm is", "alarms are") + " not acknowledged.");
        }
        said.add(
                report.gaps().isEmpty()
                        ? "The watch was not interrupted."
                        : "The watch was interrupted " + times(report.gaps().size()) + '.');
        return String.join(" ", said);
    }

    private static String number(long count, String one, String more) {
        return count + " " + (count == 1 ? one : more);
    }

    private static String times(int count) {
        return count == 1 ? "once" : count + " times";
    }

    private String whole() {
        var text = new StringBuilder("Morning report, ")
                .append(DAY.format(at(report.wallMillis())))
                .append("\nThe rack since ")
                .append(DAY.format(at(report.sinceWallMillis())))
                .append(".\n\n")
                .append(inShort(report))
                .append('\n');
        section(text, "Cells", table(report.cells(), this::cell), "no cell is on the rack");
        section(text, "Nobody watches", report.unwatched(), "");
        section(text, "Alarms", table(report.alarms(), this::alarm), "none");
        section(text, "Gaps of watching", report.gaps().stream().map(this::gap).toList(), "none");
        section(text, "To do until tomorrow", table(report.today(), this::errand), "nothing");
        return text.append('\n').append(CAUTION).toString();
    }

    private static void section(StringBuilder text, String title, List<String> lines, String none) {
        if (lines.isEmpty() && none.isEmpty()) {
            return;
        }
        text.append('\n').append(title).append('\n');
        (lines.isEmpty() ? List.of(none) : lines).stream().limit(MOST_LINES).forEach(line -> text.append("  ")
                .append(line)
                .append('\n'));
        if (lines.size() > MOST_LINES) {
            text.append("  and ").append(lines.size() - MOST_LINES).append(" more\n");
        }
    }

    private List<String> cell(CellLine cell) {
        String before = cell.evening().map(Phase::name).orElse("new");
        String phase = before.equals(cell.now().name()) ? before : before + " -> " + cell.now();
        return List.of(
                cell.tag(),
                cell.board() + ' ' + cell.channel(),
                phase,
                cell.raised().isEmpty()
                        ? "-"
                        : cell.raised().stream().map(Enum::name).collect(Collectors.joining(", ")),
                cell.next().map(this::next).orElse("nothing more"));
    }

    private String next(Errand errand) {
        return when(errand) + ": " + errand.task().words();
    }

    private List<String> alarm(AlarmLine alarm) {
        return List.of(
                time(alarm.wallMillis()),
                alarm.kind().name(),
                alarm.about(),
                alarm.line() + ' ' + words(alarm.state()));
    }

    private static String words(AlarmState state) {
        return switch (state) {
            case NORMAL -> "It is over.";
            case UNACKNOWLEDGED -> "It stands, and nobody has acknowledged it.";
            case ACKNOWLEDGED -> "It stands, and somebody knows.";
            case RETURNED_UNACKNOWLEDGED, LATCHED_UNACKNOWLEDGED -> "It is gone, and nobody has acknowledged it.";
            case LATCHED_ACKNOWLEDGED -> "It is gone, and must be reset by a person who has looked.";
        };
    }

    private String gap(Gap gap) {
        String until =
                gap.untilWallMillis().isPresent() ? time(gap.untilWallMillis().getAsLong()) : "now";
        return time(gap.fromWallMillis()) + " to " + until + ", board " + gap.board() + ": " + gap.line();
    }

    private List<String> errand(Errand errand) {
        return List.of(when(errand), errand.tag(), errand.task().words() + ' ' + errand.why());
    }

    private String when(Errand errand) {
        return errand.dueWallMillis() <= report.wallMillis() ? "now" : "from " + time(errand.dueWallMillis());
    }

    private String time(long wallMillis) {
        ZonedDateTime at = at(wallMillis);
        long days = Math.abs(ChronoUnit.DAYS.between(today, at.toLocalDate()));
        return (days == 0 ? TIME : days < WEEK_DAYS ? SHORT_DAY : DAY).format(at);
    }

    private ZonedDateTime at(long wallMillis) {
        return Instant.ofEpochMilli(wallMillis).atZone(zone);
    }

    /** Lines whose fields stand below each other; the last is as long as it is. */
    private static <T> List<String> table(List<T> things, Function<T, List<String>> fields) {
        List<List<String>> rows = things.stream().map(fields).toList();
        return rows.stream().map(row -> line(row, rows)).toList();
    }

    private static String line(List<String> row, List<List<String>> rows) {
        var line = new StringBuilder();
        for (int column = 0; column < row.size() - 1; column++) {
            int at = column;
            int width =
                    rows.stream().mapToInt(each -> each.get(at).length()).max().orElse(0);
            line.append(row.get(column))
                    .append(" ".repeat(width - row.get(column).length() + 2));
        }
        return line.append(row.get(row.size() - 1)).toString();
    }
}
