package org.ebbwatch.night;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.FindingKind.Urgency;

/** Writes what the nights gave. */
final class NightReport {
    private final Tally tally;
    private final StringBuilder out = new StringBuilder();

    NightReport(Tally tally) {
        this.tally = tally;
    }

    String text() {
        acceptance();
        rests();
        findings();
        wrongs();
        troubles();
        return out.toString();
    }

    private void line(String format, Object... arguments) {
        out.append(String.format(Locale.ROOT, format, arguments)).append('\n');
    }

    private void acceptance() {
        int ringing = 0;
        for (FindingKind kind : FindingKind.values()) {
            if (kind.urgency() != Urgency.ADVISORY) {
                Tally.Row row = tally.rows.get(kind);
                ringing += row.falseAlone + row.falseBeside;
            }
        }
        double nights = tally.channelNights();
        line("## What was asked, and what came out");
        line("");
        line(
                "%d passages (%d of them with nothing wrong) over %.0f channel-nights of 24 h.",
                tally.passages, tally.soundPassages, nights);
        line("");
        line("| asked | measured |");
        line("| --- | --- |");
        line(
                "| no cell released that rests above its limit 24 h later | %s of %d released; the highest rests at %s of"
                        + " the limit, %d above 0.6 of it |",
                Figures.count(tally.wrongReleases, tally.released),
                tally.released,
                Figures.two(tally.highestReleased),
                tally.releasedNearLimit);
        for (FindingKind kind :
                List.of(FindingKind.HOT, FindingKind.REVERSED, FindingKind.CUT_OFF, FindingKind.LEAD_OPEN)) {
            Tally.Row row = tally.rows.get(kind);
            line("| no %s missed | %s of %d |", kind, Figures.count(row.missed, row.events()), row.events());
        }
        line(
                "| at most 1 false alarm per 1,000 channel-nights, ringing findings | %s (%d), and %s (%d) held for"
                        + " another cell |",
                Figures.perThousand(ringing, nights),
                ringing,
                Figures.perThousand(tally.falseHolds, nights),
                tally.falseHolds);
        line(
                "| no STALLED on a healthy LFP plateau | %s of %d sound LFP passages |",
                Figures.count(tally.stalledOnSoundLfp, tally.soundLfp), tally.soundLfp);
        line("| each lock held in every night | %d broken |", tally.locksBroken);
        line(
                "| cells changed in a silence are held | %d of %d (two that show the same voltage cannot be told apart) |",
                tally.swapsHeld, tally.swaps);
        line(
                "| (usefulness) sound passages released | %d of %d; %d of all passages not over after 7 days |",
                tally.soundReleased, tally.soundPassages, tally.unfinished);
        line("");
    }

    private void rests() {
        line(
                "Rests of `careful` on channels with nothing wrong so far, by where the cell would stand 24 h after its load");
        line(
                "came off. A cell below the limit that is sent back costs a day or two; one above it that is tied off is what");
        line("must not be (unless it had been taken off early, and rested longer).");
        line("");
        line("| would rest, against the limit | rests | tied off | sent back | held |");
        line("| --- | --- | --- | --- | --- |");
        for (int band = 0; band < Rests.NAMES.length; band++) {
            line(
                    "| %s | %d | %s | %d | %d |",
                    Rests.NAMES[band],
                    tally.rests.all[band],
                    band < 2
                            ? Integer.toString(tally.rests.tiedOff[band])
                            : Figures.count(tally.rests.tiedOff[band], tally.rests.all[band]),
                    tally.rests.sentBack[band],
                    tally.rests.held[band]);
        }
        line("");
    }

    private void findings() {
        line("## Finding by finding");
        line("");
        line(
                "False: \"alone\" on a channel with nothing wrong on it or its board, \"beside\" while something else was");
        line(
                "wrong. Delay in seconds from the moment the truth bore the finding out, for heat from the first heating,");
        line(
                "for a lead from the first moment it was off with the load off. \"Lost\": found, gone, and not found again");
        line("though still due. Ideal: an observer who knows course and noise, at one false alarm in 1,000 nights.");
        line("");
        line(
                "| finding | events | found | missed | late | lost | false per 1,000 nights | alone | beside | delay median /"
                        + " p95 | ideal median / p95 |");
        line("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        for (FindingKind kind : FindingKind.values()) {
            Tally.Row row = tally.rows.get(kind);
            line(
                    "| %s%s | %d | %d | %s | %d | %d | %s | %d | %d | %s | %s |",
                    kind,
                    kind.urgency() == Urgency.ADVISORY ? " (advisory)" : "",
                    row.events(),
                    row.found,
                    Figures.count(row.missed, row.events()),
                    row.late,
                    row.lostAgain,
                    Figures.perThousand(row.falseAlone + row.falseBeside, tally.channelNights()),
                    row.falseAlone,
                    row.falseBeside,
                    Figures.medianAnd95(row.delays),
                    Figures.medianAnd95(row.ideals));
        }
        line("");
    }

    private void wrongs() {
        line("## What went wrong");
        line("");
        line("Each sort with a few nights in which to see it; channel 0 has the trouble, channel 1 is the sound one.");
        List<Map.Entry<String, Blots>> sorts = tally.blots.entrySet().stream()
                .sorted(Comparator.<Map.Entry<String, Blots>, Blot.Kind>comparing(
                                same -> same.getValue().kind())
                        .thenComparing(same -> -same.getValue().count()))
                .toList();
        for (Map.Entry<String, Blots> sort : sorts) {
            Blots same = sort.getValue();
            line("");
            line("- **%s**, %d: %s", sort.getKey(), same.count(), beside(same.counts()));
            for (Blot blot : same.examples()) {
                line("  - seed %d, channel %d, %.2f h: %s", blot.seed(), blot.channel(), blot.hours(), blot.line());
            }
        }
        line("");
    }

    private static String beside(Map<Trouble, Integer> counts) {
        return counts.entrySet().stream()
                .map(one -> one.getValue() + " beside " + one.getKey())
                .collect(Collectors.joining(", "));
    }

    private void troubles() {
        line("## What was wrong in the nights");
        line("");
        line("| trouble | nights | channels on which it began |");
        line("| --- | --- | --- |");
        tally.nightsOf.forEach((trouble, count) -> line(
                "| %s | %d | %s |",
                trouble, count, trouble.stages().isEmpty() ? "all" : tally.beganOf.getOrDefault(trouble, 0)));
        line("");
    }
}
