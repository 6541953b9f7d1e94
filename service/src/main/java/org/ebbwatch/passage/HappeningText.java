package org.ebbwatch.passage;

import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.passage.Happening.Kind;

/** The words of a happening: what a person did, and what followed from an entry. */
record HappeningText(Kind kind, String what, String line) {

    /** What a person did, said or measured; empty where no person did. */
    static Optional<HappeningText> of(Entry entry) {
        if (entry instanceof Entry.Acted acted) {
            return done(acted.act().name(), "");
        }
        if (entry instanceof Entry.Metered metered) {
            return done("METERED", String.format(Locale.ROOT, "A meter reads %.4f V.", metered.volts()));
        }
        if (entry instanceof Entry.Announced announced) {
            long minutes = Math.round((announced.untilMillis() - announced.eventMillis()) / 60_000.0);
            return done(
                    announced.work().map(Enum::name).orElse("ANNOUNCED"), "Work is announced for " + minutes + " min.");
        }
        if (entry instanceof Entry.Moved moved) {
            return done("MOVED", "Moved to channel " + moved.channel() + '.');
        }
        if (entry instanceof Entry.OwnLoad own) {
            String who = own.switched() ? "the board switches" : "hands switch";
            return done("OWN_LOAD", String.format(Locale.ROOT, "It finishes on %.2f ohms, which %s.", own.ohms(), who));
        }
        if (entry instanceof Entry.CalibrationChanged) {
            return done(
                    "CALIBRATION_CHANGED",
                    "Its channel's calibration changed; volts before and after cannot be compared.");
        }
        return Optional.empty();
    }

    private static Optional<HappeningText> done(String what, String line) {
        return Optional.of(new HappeningText(Kind.DONE, what, line));
    }

    /** A phase change, a finding that came or went, or what a person is asked to do; empty for what is the board's to do. */
    static Optional<HappeningText> of(Outcome.Event event) {
        if (event instanceof Outcome.PhaseChanged changed) {
            return Optional.of(new HappeningText(Kind.PHASE, changed.to().name(), changed.reason()));
        }
        if (event instanceof Outcome.Raised raised) {
            return Optional.of(new HappeningText(
                    Kind.RAISED,
                    raised.finding().kind().name(),
                    raised.finding().line()));
        }
        if (event instanceof Outcome.Cleared cleared) {
            return Optional.of(new HappeningText(Kind.CLEARED, cleared.kind().name(), ""));
        }
        return event instanceof Outcome.Wished wished && Change.isForPeople(wished.wish())
                ? Optional.of(new HappeningText(Kind.ASKED, wished.wish().name(), ""))
                : Optional.empty();
    }
}
