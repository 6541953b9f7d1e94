package org.ebbwatch.evening.rule;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.alarm.book.Cover;
import org.ebbwatch.judge.FindingKind.Urgency;

/** Decides from facts which points are proven, which failed, and which nobody knows. Says for each what to do. */
public final class EveningRules {
    private static final long MEBIBYTE = 1 << 20;

    private EveningRules() {}

    /**
     * Everything that is known.
     *
     * @param cells every cell whose passage is open
     * @param boards every board of the rack file
     * @param alarms that are alive, the test alarm left out
     */
    public record Facts(
            List<CellFacts> cells,
            List<BoardFacts> boards,
            List<OutletFacts> outlets,
            List<AlarmFacts> alarms,
            HostFacts host) {
        public Facts {
            cells = List.copyOf(cells);
            boards = List.copyOf(boards);
            outlets = List.copyOf(outlets);
            alarms = List.copyOf(alarms);
        }
    }

    /** The points, cells first. */
    public static List<Point> points(Facts facts) {
        List<Point> points = new ArrayList<>();
        facts.cells().forEach(cell -> points.addAll(CellPoints.of(cell)));
        facts.boards().forEach(board -> points.addAll(BoardPoints.of(board)));
        host(facts.host(), points);
        alarms(facts.alarms(), points);
        outlets(facts.outlets(), points);
        return points;
    }

    private static void host(HostFacts host, List<Point> points) {
        String time = "the host knows what time it is";
        points.add(
                host.clockKnown()
                        ? Point.passed(Matter.HOST_CLOCK, "", time, "set by a time service or a clock chip")
                        : Point.notProven(
                                Matter.HOST_CLOCK,
                                "",
                                time,
                                "neither a time service nor a clock chip: night hours and labels may be wrong",
                                "Connect the host to a time service. What is judged does not hang on it."));
        points.add(storage(host));
        String all = "everything the rack file names is watched";
        if (host.unwatched().isEmpty()) {
            points.add(Point.passed(Matter.WATCHED, "", all, "so it is"));
        }
        host.unwatched()
                .forEach(line -> points.add(Point.failed(
                        Matter.WATCHED, "", all, line, "Correct the rack file or the wiring, and start again.")));
    }

    private static Point storage(HostFacts host) {
        String room = "records can be kept, with room for a night: " + host.neededBytes() / MEBIBYTE + " MiB";
        String seen = host.freeBytes() / MEBIBYTE + " MiB free";
        if (!host.trouble().isEmpty()) {
            return Point.failed(
                    Matter.STORAGE,
                    "",
                    room,
                    host.trouble(),
                    "Make room on the disk, or see to it. Do not stop the service before.");
        }
        return host.freeBytes() < host.neededBytes()
                ? Point.failed(Matter.STORAGE, "", room, seen, "Make room on the disk.")
                : Point.passed(Matter.STORAGE, "", room, seen);
    }

    private static void alarms(List<AlarmFacts> alarms, List<Point> points) {
        String expected = "no alarm waits for a person, and none that rings is put away";
        int before = points.size();
        alarms.forEach(alarm -> alarm(alarm, expected, points));
        if (points.size() == before) {
            points.add(Point.passed(Matter.ALARM, "", expected, alarms.size() + " alive, all known to somebody"));
        }
    }

    private static void alarm(AlarmFacts alarm, String expected, List<Point> points) {
        String about = alarm.kind() + " " + alarm.subject();
        boolean rings = alarm.kind().urgency() != Urgency.ADVISORY;
        if (alarm.cover() != Cover.NONE) {
            if (rings) {
                points.add(Point.failed(
                        Matter.ALARM,
                        about,
                        expected,
                        "it is " + alarm.cover(),
                        "Bring it back into view, and see to it."));
            }
        } else if (alarm.state().isUnacknowledged()) {
            points.add(Point.failed(
                    Matter.ALARM,
                    about,
                    expected,
                    "nobody acknowledged it",
                    alarm.kind().toDo()));
        } else if (alarm.state() == AlarmState.LATCHED_ACKNOWLEDGED) {
            points.add(Point.failed(
                    Matter.ALARM, about, expected, "it is latched", "Look whether it is over, and reset it."));
        } else if (alarm.kind().urgency() == Urgency.DANGER) {
            points.add(Point.failed(
                    Matter.ALARM,
                    about,
                    expected,
                    "the danger stands",
                    alarm.kind().toDo()));
        }
    }

    private static void outlets(List<OutletFacts> outlets, List<Point> points) {
        String expected = "a test alarm leaves, and a person has it";
        if (outlets.isEmpty()) {
            points.add(Point.failed(
                    Matter.OUTLET,
                    "",
                    expected,
                    "no outlet is configured: nobody who does not look at the page hears of an alarm",
                    "Name an outlet under alarms in the rack file."));
        }
        for (OutletFacts outlet : outlets) {
            points.add(outlet(outlet, expected));
        }
    }

    private static Point outlet(OutletFacts outlet, String expected) {
        if (!outlet.delivered()) {
            String why = outlet.error().isEmpty() ? "it has not left yet" : outlet.error();
            return Point.failed(
                    Matter.OUTLET,
                    outlet.name(),
                    expected,
                    why + "; " + outlet.waiting() + " wait",
                    "See to the network, the address and the receiver, then check again.");
        }
        return outlet.heardBy().isEmpty()
                ? Point.notProven(
                        Matter.OUTLET,
                        outlet.name(),
                        expected,
                        "it left; nobody has said that it arrived",
                        "Look whether it arrived and say so: only a person can tell.")
                : Point.passed(Matter.OUTLET, outlet.name(), expected, outlet.heardBy() + " had it");
    }
}
