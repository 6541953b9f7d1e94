package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.judge.procedure.LoadTolerance;
import org.ebbwatch.rig.message.Ability;

/**
 * Carries out what passages wish of their loads. The load of a string is all its cells': what a person does with it is entered for
 * every one of them, it closes only when every one is there and wants it, and once one of them must come off it opens for good,
 * whereupon they finish singly.
 */
final class Loads {
    private static final Set<Act> OF_THE_WHOLE_STRING = Set.of(Act.PUT_ON, Act.TAKE_OFF);

    private static final Set<Act> CLOSING = Set.of(Act.PUT_ON, Act.DRAIN_AGAIN);

    private final RackWatch watch;
    private final BoardControl control;

    Loads(RackWatch watch, BoardControl control) {
        this.watch = watch;
        this.control = control;
    }

    /** A passage wishes its load closed. */
    void close(OpenPassage passage) {
        if (passage.string().isEmpty()) {
            control.setLoad(passage.card().board(), passage.card().channel(), true);
        } else if (mayClose(passage)) {
            set(passage, true);
        }
    }

    /** A passage wishes its load open; in a string others that still want it are told that it is open for good. */
    void open(OpenPassage passage) {
        if (passage.string().isPresent()) {
            if (mates(passage).stream().anyMatch(mate -> mate.judge().isLoadWanted())) {
                openForGood(passage);
            } else {
                set(passage, false);
            }
        } else if (passage.card().cell().string().isEmpty() || hasSwitch(passage)) {
            control.setLoad(passage.card().board(), passage.card().channel(), false);
        }
    }

    /** The load of the whole string must open now. */
    void openForGood(OpenPassage passage) {
        List<OpenPassage> mates = mates(passage);
        set(passage, false);
        for (OpenPassage mate : mates) {
            watch.follow(
                    mate,
                    new Entry.StringOpened(
                            watch.now(mate), Optional.of(passage.card().cell().tag())));
        }
    }

    /** Smoke is reported: every load opens, by relay and by switch, and no cell is accused of having lost its own. */
    void openAllForSmoke() {
        watch.boards().keySet().forEach(control::openAllLoads);
        for (OpenPassage passage : watch.passages().open()) {
            watch.follow(passage, new Entry.Smoke(watch.now(passage)), true);
        }
    }

    /** Enters what a person did; for a whole string where it is the string's load, or smoke held all of it. */
    void act(OpenPassage passage, Act act) {
        boolean afterSmoke = act == Act.DRAIN_AGAIN && passage.judge().isBarred();
        if (passage.string().isEmpty() || !(OF_THE_WHOLE_STRING.contains(act) || afterSmoke)) {
            watch.follow(passage, new Entry.Acted(watch.now(passage), act));
            return;
        }
        for (OpenPassage mate : mates(passage)) {
            if (mate.judge().allowed().contains(act)
                    && (!afterSmoke || mate.judge().isBarred())) {
                watch.follow(mate, new Entry.Acted(watch.now(mate), act), act == Act.TAKE_OFF);
            }
        }
        if (act == Act.TAKE_OFF) {
            set(passage, false);
        } else if (mayClose(passage)) {
            set(passage, true);
        }
    }

    /** Why a load may not be put on now, because of smoke or of other cells of the string; empty where it may. */
    Optional<String> inTheWay(OpenPassage passage, Act act) {
        if (CLOSING.contains(act) && passage.judge().isSwitched() && watch.smokeStands()) {
            return Optional.of("Smoke is reported: no load closes before the contact says that it is over.");
        }
        if (act != Act.PUT_ON || passage.string().isEmpty()) {
            return Optional.empty();
        }
        CellString string = passage.string().get();
        List<OpenPassage> mates = mates(passage);
        if (mates.size() < string.cells()) {
            return Optional.of("Only " + mates.size() + " of the " + string.cells() + " cells of the string "
                    + string.name() + " are checked in.");
        }
        return mates.stream()
                .filter(mate -> !mate.judge().allowed().contains(act)
                        || !mate.judge().standingWishes().contains(Wish.ASK_PUT_ON))
                .findFirst()
                .map(mate -> "The cell " + mate.card().cell().tag() + " of the string " + string.name()
                        + " is not ready for it: " + mate.judge().reason() + '.');
    }

    /** Why a cell may not join the cells that are on a board; empty where it may. */
    Optional<String> inTheWay(String board, int channel, CellCard cell) {
        for (OpenPassage other : watch.passages().on(board)) {
            if (other.judge().phase().isOver()) {
                continue;
            }
            CellCard its = other.card().cell();
            boolean joins = cell.string().isPresent() && cell.string().equals(its.string());
            boolean within = cell.string().isPresent()
                    && cell.string().get().reachesOver(other.card().channel());
            boolean intrudes = other.string().isPresent()
                    && (other.string().get().reachesOver(channel)
                            || cell.string()
                                    .filter(other.string().get()::overlaps)
                                    .isPresent());
            if (!joins && (within || intrudes)) {
                return Optional.of("The cell " + its.tag() + " on channel "
                        + other.card().channel() + " is in the way of the string.");
            }
            if (joins && !other.judge().isInString()) {
                return Optional.of(
                        "The string was opened; its cells finish singly. Check this one in without the string.");
            }
            if (joins && !isSameLoad(its, cell)) {
                return Optional.of("The cell " + its.tag() + " of the same string was checked in with " + its.loadOhms()
                        + " ohms within "
                        + 100 * its.loadTolerance().orElse(LoadTolerance.USUAL).share() + " %, "
                        + (its.switched() ? "" : "not ") + "switched: a string has one load.");
            }
        }
        return Optional.empty();
    }

    private static boolean isSameLoad(CellCard one, CellCard other) {
        return one.loadOhms() == other.loadOhms()
                && one.switched() == other.switched()
                && one.loadTolerance()
                        .orElse(LoadTolerance.USUAL)
                        .equals(other.loadTolerance().orElse(LoadTolerance.USUAL));
    }

    private boolean mayClose(OpenPassage passage) {
        List<OpenPassage> mates = mates(passage);
        return mates.size() == passage.string().map(CellString::cells).orElse(1)
                && mates.stream().allMatch(mate -> mate.judge().mayLoadClose());
    }

    private boolean hasSwitch(OpenPassage passage) {
        return watch.boards().get(passage.card().board()).can(passage.card().channel(), Ability.LOAD_SWITCH);
    }

    private void set(OpenPassage passage, boolean closed) {
        String board = passage.card().board();
        Optional<CellString> string = passage.card().cell().string();
        if (string.isEmpty()) {
            mates(passage).forEach(mate -> control.setLoad(board, mate.card().channel(), closed));
        } else if (passage.card().cell().switched()) {
            watch.boards()
                    .get(board)
                    .switchOf(string.get())
                    .ifPresent(channel -> control.setLoad(board, channel, closed));
        }
    }

    /** The cells that hang on the same load, itself among them as long as it is not over. */
    private List<OpenPassage> mates(OpenPassage passage) {
        return watch.passages().on(passage.card().board()).stream()
                .filter(mate -> mate.judge().isInString()
                        && !mate.judge().phase().isOver()
                        && mate.card()
                                .cell()
                                .string()
                                .equals(passage.card().cell().string()))
                .toList();
    }
}
