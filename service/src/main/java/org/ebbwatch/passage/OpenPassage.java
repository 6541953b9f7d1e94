package org.ebbwatch.passage;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Scan;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.LoadStep;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.estimate.StepResistance;
import org.ebbwatch.judge.procedure.CellString;
import org.ebbwatch.passage.Happening.Kind;
import org.ebbwatch.passage.PassageGlance.LeadAnswer;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;
import org.ebbwatch.rig.message.Ability;

/** One passage being watched: its card, its judge, its place in the journal and its recent past. */
final class OpenPassage {

    private final PassageCard opened;
    private final PassageLog log;
    private final Judge judge;
    private final Deque<Past> past = new ArrayDeque<>();
    private PassageCard card;
    private long sequence;
    private long changedSequence;
    private long lastScanMillis;
    private Optional<LeadAnswer> lead = Optional.empty();

    /** A passage just opened. */
    OpenPassage(PassageCard card, PassageLog log) {
        this(card, card, log, new Judge(card.cell(), card.procedure()));
        this.lastScanMillis = card.openedMillis() - 1;
    }

    /** A passage taken up again. */
    OpenPassage(PassageCard card, PassageLog log, Refolded refolded) {
        this(card, card.at(refolded.channel()), log, refolded.judge());
        this.sequence = refolded.sequence();
        this.changedSequence = refolded.changedSequence();
        this.lastScanMillis = refolded.lastScanMillis();
        refolded.past().forEach(this::remember);
    }

    private OpenPassage(PassageCard opened, PassageCard now, PassageLog log, Judge judge) {
        this.opened = opened;
        this.card = now;
        this.log = log;
        this.judge = judge;
    }

    /** As it was opened. */
    PassageCard opened() {
        return opened;
    }

    /** As it was opened, but with the channel it is on now. */
    PassageCard card() {
        return card;
    }

    Judge judge() {
        return judge;
    }

    /** The string it is drained with; empty where it stands singly. */
    Optional<CellString> string() {
        return judge.isInString() ? card.cell().string() : Optional.empty();
    }

    /** Whether the volts of its channels come out otherwise by another basis. */
    boolean readsOtherwise(BoardBasis was, BoardBasis now) {
        int first = string().map(CellString::firstChannel).orElse(card.channel());
        int last = string().map(CellString::lastChannel).orElse(card.channel());
        return IntStream.rangeClosed(first, last)
                .anyMatch(channel -> !Objects.equals(
                        was.corrections().get(channel), now.corrections().get(channel)));
    }

    /** Sequence of the last entry by which something changed that a person goes by. */
    long changedSequence() {
        return changedSequence;
    }

    /** Folds an entry, writes it and what follows from it to the journal, and returns what follows. */
    Outcome fold(Entry entry) {
        sequence++;
        if (entry instanceof Scan) {
            lastScanMillis = entry.eventMillis();
        } else {
            log.entered(card.id(), sequence, lastScanMillis, entry);
        }
        if (entry instanceof Entry.LeadChecked checked) {
            lead = Optional.of(new LeadAnswer(checked.proof(), sequence));
        }
        Outcome outcome = judge.fold(entry);
        for (Outcome.Event event : outcome.events()) {
            log.happened(card.id(), sequence, entry.eventMillis(), event);
            Past.of(entry.eventMillis(), event).ifPresent(this::remember);
        }
        if (entry instanceof Entry.Moved moved) {
            card = card.at(moved.channel());
        }
        if (Change.isOne(entry, outcome)) {
            changedSequence = sequence;
        }
        return outcome;
    }

    /** What the terminals say of a load put on by hand, against what was said. */
    Optional<LoadStep> seems() {
        return judge.seems();
    }

    /** Adds what is to be told of an entry that was just folded. */
    void news(Entry entry, Outcome outcome, Optional<LoadStep> seemed, List<Happening> into) {
        long at = entry.eventMillis();
        HappeningText.of(entry).ifPresent(told -> into.add(happening(Kind.DONE, at, told.what(), told.line())));
        for (Outcome.Event event : outcome.events()) {
            HappeningText.of(event).ifPresent(told -> into.add(happening(told.kind(), at, told.what(), told.line())));
        }
        if (!seems().equals(seemed)) {
            String what = seems().map(Enum::name).orElse("");
            into.add(
                    happening(Kind.SEEMS, at, what, seems().map(LoadStep::words).orElse("")));
        }
    }

    Happening happening(Kind kind, long eventMillis, String what, String line) {
        return new Happening(
                kind,
                card.board(),
                Optional.of(card.id()),
                card.cell().tag(),
                card.channel(),
                eventMillis,
                changedSequence,
                what,
                line);
    }

    private void remember(Past what) {
        past.add(what);
        if (past.size() > PassageView.PAST_KEPT) {
            past.removeFirst();
        }
    }

    /** What came of a request that was entered just now. */
    Receipt receipt() {
        return new Receipt(card.id(), changedSequence, card.board(), card.channel(), judge.phase(), judge.reason());
    }

    PassageStanding standing() {
        return new PassageStanding(
                card, judge.phase(), judge.reason(), List.copyOf(judge.findings()), judge.lastMillis(), sequence);
    }

    PassageGlance glance(BoardWatch board) {
        boolean heard = board.eventMillis() >= 0;
        return new PassageGlance(
                card,
                judge.phase(),
                judge.isSwitched(),
                judge.isInString(),
                judge.isLoadOn(),
                judge.mayLoadClose(),
                judge.isBonded(),
                judge.hasDrawn(),
                judge.hasRecovered(),
                judge.internalResistance().map(StepResistance.Step::ohms).orElse(Double.NaN),
                judge.findings().stream().map(Finding::kind).collect(Collectors.toSet()),
                lead,
                board.isKnown() && board.can(card.channel(), Ability.LEAD_CHECK),
                heard ? Optional.of(board.reading(card.channel(), string())) : Optional.empty());
    }

    PassageView view() {
        return new PassageView(
                card,
                changedSequence,
                judge.phase(),
                judge.reason(),
                judge.round(),
                judge.ampereHours(),
                judge.wattHours(),
                judge.remainingMillis(),
                judge.isLocked(),
                judge.isLoadOn(),
                judge.isBonded(),
                seems(),
                List.copyOf(judge.findings()),
                judge.standingWishes(),
                judge.allowed(),
                List.copyOf(past));
    }
}
