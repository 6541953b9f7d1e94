package org.ebbwatch.web;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.LoadStep;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.ClosedPassage;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackSource.TracePoint;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;
import org.ebbwatch.rig.message.ChannelRole;

/** An invented workshop with two boards: one that is heard and one whose cable was pulled. */
public final class InventedWorkshop {
    /** 2026-11-25T03:12:44.120Z. */
    public static final long SCANNED_MILLIS = 1_795_576_364_120L;

    private static final long EVENT_MILLIS = 93_600_000;
    private static final long HOUR = 3_600_000;

    private InventedWorkshop() {}

    /** The identifier of the n-th passage. */
    public static UUID id(int n) {
        return UUID.fromString("01931f00-0000-7000-8000-0000000000%02d".formatted(n));
    }

    /** A night with a bit of everything. */
    public static RackView mixed() {
        List<ChannelView> channels = new ArrayList<>(List.of(
                cell("bench", 0, 3.4118, 26.4, true),
                cell("bench", 1, 0.0412, 22.9, true),
                cell("bench", 2, 0.2313, 21.7, false),
                cell("bench", 3, 0.0009, 21.6, false),
                cell("bench", 4, 0.0214, 23.1, true),
                cell("bench", 5, 0.3104, 21.5, false),
                cell("bench", 6, 2.9071, 47.2, true),
                cell("bench", 7, Double.NaN, Double.NaN, false),
                other("bench", 8, ChannelRole.AMBIENT, 21.4),
                other("bench", 9, ChannelRole.DUMMY, 21.5),
                other("bench", 10, ChannelRole.BANK, 68.3),
                cell("shed", 0, 2.8132, 19.6, true),
                cell("shed", 1, 0.4021, Double.NaN, false)));
        return new RackView(
                List.of(
                        new BoardView("bench", LinkState.CONNECTED, "", "EB-0001", 0, EVENT_MILLIS, SCANNED_MILLIS, 5),
                        new BoardView(
                                "shed",
                                LinkState.LOST,
                                "The port is gone. Plug the cable in again.",
                                "EB-0002",
                                60,
                                EVENT_MILLIS,
                                SCANNED_MILLIS - 605_000,
                                0)),
                channels,
                passages());
    }

    /** The same rack with nothing but its first board and three cells that want nothing. */
    public static RackView quiet() {
        RackView mixed = mixed();
        return new RackView(
                mixed.boards().subList(0, 1),
                mixed.channels().subList(0, 11),
                mixed.passages().subList(0, 4));
    }

    /** The same rack with every board in this state. */
    public static RackView linked(LinkState state) {
        RackView mixed = mixed();
        return new RackView(
                mixed.boards().stream()
                        .map(board -> new BoardView(
                                board.name(),
                                state,
                                "",
                                board.serialNumber(),
                                board.simulatedSpeed(),
                                board.eventMillis(),
                                board.wallMillis(),
                                board.contacts()))
                        .toList(),
                mixed.channels(),
                mixed.passages());
    }

    /** The n-th of many passages that are over. */
    public static ClosedPassage closed(int n) {
        var cell = new CellCard("old-" + n, Chemistry.LFP, 1.5, 10, true, false);
        var id = UUID.fromString("01931e00-0000-7000-8000-000000000%03d".formatted(n));
        var card = new PassageCard(id, "bench", 3, cell, Procedure.careful(), 1_000L * n, SCANNED_MILLIS, 0);
        return n % 5 == 0
                ? new ClosedPassage(card, 1_000L * n + 900, Phase.WITHDRAWN, "withdrawn by a person")
                : new ClosedPassage(card, 1_000L * n + 900, Phase.RELEASED, "below the rested limit");
    }

    /** A trace of so many points in which the temperature was never read. */
    public static List<TracePoint> trace(int points) {
        return IntStream.range(0, points)
                .mapToObj(n -> new TracePoint(n * 1000L, n == 3 ? Double.NaN : 3.9 - n * 0.001, Double.NaN, n > 5))
                .toList();
    }

    private static List<PassageView> passages() {
        return List.of(
                passage(1, "torch-2", "bench", 0, Phase.DRAIN, "put on the load", 12 * HOUR, List.of()),
                passage(2, "drill-3b", "bench", 1, Phase.DRAIN, "came back to 0.861 V", 22_320_000, List.of()),
                passage(
                        3,
                        "phone, puffed",
                        "bench",
                        2,
                        Phase.REST,
                        "held below the drain limit",
                        51_600_000,
                        List.of()),
                passage(4, "kite-1", "bench", 3, Phase.TIE_OFF, "leads bonded without a spark", 32_580_000, List.of()),
                passage(5, "vacuum-6", "bench", 4, Phase.HELD, "cut off", 0, List.of(finding(FindingKind.CUT_OFF))),
                passage(6, "lamp, old", "bench", 5, Phase.REST, "held below the drain limit", 0, List.of()),
                passage(
                        7,
                        "speaker-7",
                        "bench",
                        6,
                        Phase.DRAIN,
                        "put on the load",
                        12 * HOUR,
                        List.of(finding(FindingKind.STALLED), finding(FindingKind.WARMING))),
                passage(
                        8,
                        "bike-11",
                        "shed",
                        0,
                        Phase.DRAIN,
                        "put on the load",
                        12 * HOUR,
                        List.of(finding(FindingKind.SILENT))),
                passage(
                        9,
                        "bike-12",
                        "shed",
                        1,
                        Phase.REST,
                        "held below the drain limit",
                        20 * HOUR,
                        List.of(finding(FindingKind.SILENT))),
                passage(10, "radio-4", "bench", 7, Phase.RELEASED, "below the rested limit", 0, List.of()),
                passage(11, "toy-9", "shed", 1, Phase.WITHDRAWN, "withdrawn by a person", 0, List.of()));
    }

    /** The card of the n-th passage; those on the board in the shed have their loads put on by hand. */
    public static PassageCard card(int n, String tag, String board, int channel) {
        var cell = new CellCard(tag, Chemistry.LAYERED_OXIDE, 2.2, 10, board.equals("bench"), false);
        return new PassageCard(id(n), board, channel, cell, Procedure.careful(), 7_200_000, SCANNED_MILLIS, 0);
    }

    private static PassageView passage(
            int n,
            String tag,
            String board,
            int channel,
            Phase phase,
            String reason,
            long remainingMillis,
            List<Finding> findings) {
        Set<Wish> standing = n == 6 ? EnumSet.of(Wish.ASK_TIE_OFF, Wish.CHECK_LEAD) : EnumSet.noneOf(Wish.class);
        return new PassageView(
                card(n, tag, board, channel),
                40 + n,
                phase,
                reason,
                n == 2 ? 2 : 1,
                1.8421,
                6.1307,
                remainingMillis,
                phase == Phase.HELD,
                phase == Phase.DRAIN,
                phase == Phase.TIE_OFF,
                n == 8 ? Optional.of(LoadStep.SEEMS_OFF) : Optional.empty(),
                findings,
                standing,
                phase.isOver() ? Set.of() : EnumSet.of(Act.WITHDRAW, Act.SPARK),
                List.of(
                        new Past(7_200_000, Past.Kind.PHASE, "CHECK_IN", "checked in"),
                        new Past(9_000_000, Past.Kind.PHASE, phase.name(), reason)));
    }

    private static Finding finding(FindingKind kind) {
        return switch (kind) {
            case CUT_OFF ->
                new Finding(
                        kind,
                        88_200_000,
                        Phase.DRAIN,
                        0.021,
                        0.3,
                        "V",
                        "Collapsed to 0.021 V with almost no charge out: a protection board opened. The cell is full.");
            case WARMING ->
                new Finding(kind, 91_000_000, Phase.DRAIN, 47.2, 45, "degC", "Warming: 47.2 degC, limit 45.0 degC.");
            case STALLED ->
                new Finding(
                        kind,
                        80_000_000,
                        Phase.DRAIN,
                        0.002,
                        Double.NaN,
                        "V",
                        "Stalled: 5 % of the charge left, but the voltage fell by 0.002 V only.");
            case SILENT ->
                new Finding(
                        kind, EVENT_MILLIS, Phase.DRAIN, Double.NaN, Double.NaN, "", "Nothing heard from the board.");
            default -> throw new IllegalArgumentException("not in this workshop: " + kind);
        };
    }

    private static ChannelView cell(String board, int channel, double volts, double celsius, boolean loadApplied) {
        return new ChannelView(
                board, channel, ChannelRole.CELL, volts, 0.0026, celsius, loadApplied ? volts / 4.7 : 0, loadApplied);
    }

    private static ChannelView other(String board, int channel, ChannelRole role, double celsius) {
        return new ChannelView(board, channel, role, Double.NaN, Double.NaN, celsius, Double.NaN, false);
    }
}
