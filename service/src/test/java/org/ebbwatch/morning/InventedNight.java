package org.ebbwatch.morning;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.alarm.AlarmView;
import org.ebbwatch.alarm.book.AlarmKind;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.Cause;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.alarm.book.NightHours;
import org.ebbwatch.alarm.book.Raised;
import org.ebbwatch.alarm.book.Subject;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;
import org.ebbwatch.plan.Plan;

/** A night on an invented rack, from ten in the evening to seven in the morning. */
final class InventedNight {
    static final long MORNING = Instant.parse("2026-11-25T07:00:00Z").toEpochMilli();
    static final long EVENING = MORNING - 9 * 3_600_000L;
    static final NightHours NIGHT = NightHours.usual(ZoneOffset.UTC);

    private static final long HOUR = 3_600_000;
    private static final long EVENT = 100 * HOUR;

    private final List<PassageView> passages = new ArrayList<>();
    private final List<AlarmView> living = new ArrayList<>();
    private final List<Raised> raised = new ArrayList<>();
    private final List<String> unwatched = new ArrayList<>();

    static UUID id(int n) {
        return UUID.fromString("01931f00-0000-7000-8000-0000000000%02d".formatted(n));
    }

    /** Event time so many hours before the morning. */
    static long ago(double hours) {
        return EVENT - Math.round(hours * HOUR);
    }

    static Past phase(double hoursAgo, Phase phase) {
        return new Past(ago(hoursAgo), Past.Kind.PHASE, phase.name(), "");
    }

    static Past found(double hoursAgo, FindingKind kind, String line) {
        return new Past(ago(hoursAgo), Past.Kind.RAISED, kind.name(), line);
    }

    static Past cleared(double hoursAgo, FindingKind kind) {
        return new Past(ago(hoursAgo), Past.Kind.CLEARED, kind.name(), "");
    }

    /** A cell on the board left, checked in so long ago. */
    InventedNight cell(int channel, String tag, double openedHoursAgo, long remainingMillis, Phase now, Past... past) {
        return cell(channel, tag, openedHoursAgo, remainingMillis, now, List.of(), Set.of(), past);
    }

    InventedNight cell(
            int channel,
            String tag,
            double openedHoursAgo,
            long remainingMillis,
            Phase now,
            List<Finding> findings,
            Set<Wish> asks,
            Past... past) {
        passages.add(new PassageView(
                new PassageCard(
                        id(channel),
                        "left",
                        channel,
                        new CellCard(tag, Chemistry.LAYERED_OXIDE, 2.2, 10, true, false),
                        Procedure.careful(),
                        ago(openedHoursAgo),
                        MORNING - Math.round(openedHoursAgo * HOUR),
                        0),
                7,
                now,
                "for a reason",
                1,
                1,
                3,
                remainingMillis,
                false,
                now == Phase.DRAIN,
                now == Phase.TIE_OFF,
                Optional.empty(),
                findings,
                asks,
                Set.of(),
                List.of(past)));
        return this;
    }

    InventedNight alarm(int channel, String tag, AlarmKind kind, double hoursAgo, AlarmState state, String line) {
        long wall = MORNING - Math.round(hoursAgo * HOUR);
        if (state != AlarmState.NORMAL) {
            living.add(new AlarmView(
                    new UUID(9, channel),
                    2,
                    kind,
                    kind.urgency(),
                    kind.isLatched(),
                    "passage " + id(channel),
                    state,
                    Cover.NONE,
                    true,
                    kind.what(),
                    kind.consequence(),
                    kind.toDo(),
                    new Cause(line, Optional.of(id(channel)), tag, "left", channel, 0, 0, 0),
                    List.of(tag),
                    wall,
                    "",
                    Optional.empty(),
                    Set.of()));
        }
        if (wall >= EVENING) {
            raised.add(new Raised(new UUID(9, channel), kind, new Subject.Passage(id(channel)), line, wall));
        }
        return this;
    }

    InventedNight nobodyWatches(String line) {
        unwatched.add(line);
        return this;
    }

    MorningReport report() {
        var board = new BoardView("left", LinkState.CONNECTED, "", "EB-0001", 0, EVENT, MORNING, 0);
        var rack = new RackView(List.of(board), List.of(), passages, unwatched);
        return MorningReport.of(
                new MorningFacts(rack, Plan.of(rack, NIGHT, MORNING), living, raised, EVENING, MORNING));
    }

    /** A night with a bit of everything. */
    static InventedNight eventful() {
        var cutOff = new Finding(FindingKind.CUT_OFF, ago(4.8), Phase.DRAIN, 0.02, 0.3, "V", "Collapsed to 0.021 V.");
        return new InventedNight()
                .cell(0, "torch-2", 30, 26 * HOUR, Phase.DRAIN, phase(29, Phase.DRAIN))
                .cell(
                        1,
                        "drill-3b",
                        60,
                        20 * HOUR,
                        Phase.REST,
                        phase(59, Phase.DRAIN),
                        phase(4, Phase.REST),
                        found(3.5, FindingKind.SILENT, "Nothing heard from the board."),
                        cleared(3.4, FindingKind.SILENT))
                .cell(
                        2,
                        "lamp, old",
                        80,
                        0,
                        Phase.REST,
                        List.of(),
                        Set.of(Wish.ASK_TIE_OFF),
                        phase(79, Phase.DRAIN),
                        phase(26, Phase.REST),
                        found(3.5, FindingKind.SILENT, "Nothing heard from the board."),
                        cleared(3.4, FindingKind.SILENT))
                .cell(
                        3,
                        "vacuum-6",
                        12,
                        0,
                        Phase.HELD,
                        List.of(cutOff),
                        Set.of(),
                        phase(11, Phase.DRAIN),
                        found(4.8, FindingKind.CUT_OFF, "Collapsed to 0.021 V."),
                        phase(4.8, Phase.HELD))
                .cell(4, "kite-1", 2, 0, Phase.CHECK_IN)
                .cell(5, "radio-4", 90, 0, Phase.RELEASED, phase(89, Phase.DRAIN), phase(1, Phase.RELEASED))
                .cell(6, "toy-9", 90, 0, Phase.WITHDRAWN, phase(20, Phase.WITHDRAWN))
                .alarm(3, "vacuum-6", AlarmKind.CUT_OFF, 4.8, AlarmState.UNACKNOWLEDGED, "Collapsed to 0.021 V.")
                .alarm(1, "drill-3b", AlarmKind.SILENT, 3.5, AlarmState.NORMAL, "Nothing heard from the board.")
                .nobodyWatches("bike-12: channel 9 of board left is no cell channel");
    }
}
