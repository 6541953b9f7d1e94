package org.ebbwatch.evening;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ebbwatch.evening.EveningCheck.State;
import org.ebbwatch.evening.rule.CellFacts;
import org.ebbwatch.evening.rule.EveningRules;
import org.ebbwatch.evening.rule.Point;
import org.ebbwatch.evening.rule.Proof;
import org.ebbwatch.judge.Entry.Work;
import org.ebbwatch.passage.BoardControl;
import org.ebbwatch.passage.BoardGlance;
import org.ebbwatch.passage.PassageGlance;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.time.HostTime;

/** A check that is going on. Not thread-safe: called under the rack's lock. */
final class EveningRun {
    private static final long MINUTE_MILLIS = 60_000;
    /** A sensor that was held has to cool before limits against the room count again (common practice, no source). */
    private static final int COOLING_MINUTES = 5;

    private final UUID id;
    private final String by;
    private final HostTime started;
    private final RackWatch watch;
    private final FactGatherer gatherer;
    private final List<UUID> passages;
    private final Map<String, BoardRound> rounds = new LinkedHashMap<>();
    private final Map<String, String> heardBy = new HashMap<>();

    /** Begins: announces the work on every cell, and asks nothing yet. */
    EveningRun(
            UUID id,
            String by,
            int touchMinutes,
            HostTime started,
            RackWatch watch,
            BoardControl control,
            FactGatherer gatherer) {
        this.id = id;
        this.by = by;
        this.started = started;
        this.watch = watch;
        this.gatherer = gatherer;
        for (BoardGlance board : watch.boardGlances()) {
            rounds.put(
                    board.name(),
                    new BoardRound(board.name(), control, board.intervalMillis(), touchMinutes * MINUTE_MILLIS));
        }
        List<PassageGlance> glances = watch.glances();
        this.passages = glances.stream().map(glance -> glance.card().id()).toList();
        for (PassageGlance glance : glances) {
            watch.announced(
                    glance.card().id(), (touchMinutes + COOLING_MINUTES) * MINUTE_MILLIS, Optional.of(Work.TOUCH));
            rounds.get(glance.card().board()).add(glance, FactGatherer.cell(glance, Optional.empty()));
        }
    }

    /** A scan of a board was read. */
    void scanned(String board) {
        Map<UUID, PassageGlance> glances = watch.glances().stream()
                .filter(glance -> glance.card().board().equals(board))
                .collect(Collectors.toMap(glance -> glance.card().id(), glance -> glance));
        Map<UUID, CellFacts> facts = new HashMap<>();
        glances.forEach((passage, glance) -> facts.put(passage, FactGatherer.cell(glance, Optional.empty())));
        rounds.get(board).scanned(glances, facts);
    }

    /** Looks which boards are not heard any more. */
    void look() {
        watch.boardGlances().stream().filter(board -> !board.heard()).forEach(board -> rounds.get(board.name())
                .lost());
    }

    void heard(String outlet, String who) {
        heardBy.put(outlet, who);
    }

    /** What is still going on. */
    List<String> awaits() {
        List<String> awaits = new ArrayList<>();
        rounds.forEach((board, round) -> {
            if (round.isAsking()) {
                awaits.add("loads and leads of board " + board);
            }
            if (round.isTouching()) {
                awaits.add("sensors of board " + board + " to be held");
            }
        });
        gatherer.outlets().stream()
                .filter(outlet -> !heardBy.containsKey(outlet))
                .forEach(outlet -> awaits.add("somebody who has the test alarm by " + outlet));
        return awaits;
    }

    private List<Point> points() {
        return EveningRules.points(gatherer.facts(rounds, heardBy, started.wallMillis()));
    }

    EveningCheck view() {
        List<Point> points = points();
        return new EveningCheck(
                id,
                State.RUNNING,
                by,
                started.wallMillis(),
                OptionalLong.empty(),
                Proof.worst(points),
                passages,
                points,
                awaits());
    }

    UUID id() {
        return id;
    }

    List<UUID> passages() {
        return passages;
    }

    HostTime started() {
        return started;
    }
}
