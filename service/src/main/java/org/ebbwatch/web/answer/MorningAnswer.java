package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.morning.MorningReport;
import org.ebbwatch.morning.MorningText;
import org.ebbwatch.web.answer.PlanAnswer.ErrandAnswer;

/**
 * What happened on the rack since the evening, and what the day asks for.
 *
 * @param since the evening
 * @param at when it was made
 * @param inShort what a person must know before he reads on
 * @param cells every cell that is on the rack, or left it since the evening
 * @param alarms every alarm raised since the evening, and every older one that is alive, oldest first
 * @param gaps when a board was not heard, oldest first
 * @param unwatched a line for each cell nobody watches
 * @param today what is to do within 24 h, soonest first
 * @param text the whole report as plain text
 */
@Serdeable
public record MorningAnswer(
        @Nullable String since,
        @Nullable String at,
        String inShort,
        List<CellLineAnswer> cells,
        List<AlarmLineAnswer> alarms,
        List<GapAnswer> gaps,
        List<String> unwatched,
        List<ErrandAnswer> today,
        String text) {

    /**
     * One cell.
     *
     * @param evening the phase it was in then; null: it was not checked in yet, or that is too long ago to be known
     * @param now the phase it is in
     * @param raised what was found since the evening, each kind once
     * @param needsSomebody whether something is wrong with it now, or it goes on in no other way
     * @param next what it waits for; null: it is over
     */
    @Serdeable
    public record CellLineAnswer(
            UUID passageId,
            String tag,
            String board,
            int channel,
            @Nullable Phase evening,
            Phase now,
            List<FindingKind> raised,
            boolean needsSomebody,
            @Nullable ErrandAnswer next) {
        static CellLineAnswer of(MorningReport.CellLine cell) {
            return new CellLineAnswer(
                    cell.passage(),
                    cell.tag(),
                    cell.board(),
                    cell.channel(),
                    cell.evening().orElse(null),
                    cell.now(),
                    cell.raised(),
                    cell.needsSomebody(),
                    cell.next().map(ErrandAnswer::of).orElse(null));
        }
    }

    /**
     * One alarm.
     *
     * @param at when it was raised
     * @param about the cells, or the board, or the rack
     * @param state the state it is in; NORMAL: it is over
     */
    @Serdeable
    public record AlarmLineAnswer(@Nullable String at, AlarmKind kind, String about, String line, AlarmState state) {
        static AlarmLineAnswer of(MorningReport.AlarmLine alarm) {
            return new AlarmLineAnswer(
                    Figures.wallTime(alarm.wallMillis()), alarm.kind(), alarm.about(), alarm.line(), alarm.state());
        }
    }

    /**
     * A stretch in which a board was not heard.
     *
     * @param from when that was found
     * @param until when it was heard again; null: it is not
     */
    @Serdeable
    public record GapAnswer(String board, @Nullable String from, @Nullable String until, String line) {
        static GapAnswer of(MorningReport.Gap gap) {
            return new GapAnswer(
                    gap.board(),
                    Figures.wallTime(gap.fromWallMillis()),
                    gap.untilWallMillis().isPresent()
                            ? Figures.wallTime(gap.untilWallMillis().getAsLong())
                            : null,
                    gap.line());
        }
    }

    /** The report as it is told. */
    public static MorningAnswer of(MorningReport report, ZoneId zone) {
        return new MorningAnswer(
                Figures.wallTime(report.sinceWallMillis()),
                Figures.wallTime(report.wallMillis()),
                MorningText.inShort(report),
                report.cells().stream().map(CellLineAnswer::of).toList(),
                report.alarms().stream().map(AlarmLineAnswer::of).toList(),
                report.gaps().stream().map(GapAnswer::of).toList(),
                report.unwatched(),
                report.today().stream().map(ErrandAnswer::of).toList(),
                MorningText.of(report, zone));
    }
}
