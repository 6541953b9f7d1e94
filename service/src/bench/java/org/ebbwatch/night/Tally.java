package org.ebbwatch.night;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Phase;

/** What nights add up to. One is filled by one thread and then added to the whole. */
final class Tally {
    private static final double NEAR_LIMIT = 0.6;

    /** What is counted of one finding. */
    static final class Row {
        int found;
        int missed;
        int late;
        int lostAgain;
        int falseAlone;
        int falseBeside;

        int events() {
            return found + missed;
        }

        final List<Double> delays = new ArrayList<>();
        final List<Double> ideals = new ArrayList<>();
    }

    final Map<FindingKind, Row> rows = new EnumMap<>(FindingKind.class);
    final Map<String, Blots> blots = new TreeMap<>();
    final Map<Trouble, Integer> nightsOf = new EnumMap<>(Trouble.class);
    final Map<Trouble, Integer> beganOf = new EnumMap<>(Trouble.class);
    final Rests rests = new Rests();
    int passages;
    int soundPassages;
    int released;
    int soundReleased;
    int unfinished;
    int wrongReleases;
    int locksBroken;
    int falseHolds;
    int stalledOnSoundLfp;
    int soundLfp;
    int swaps;
    int swapsHeld;
    double channelHours;
    double highestReleased;
    int releasedNearLimit;

    Tally() {
        for (FindingKind kind : FindingKind.values()) {
            rows.put(kind, new Row());
        }
    }

    void night(Trouble trouble) {
        nightsOf.merge(trouble, 1, Integer::sum);
    }

    int nights() {
        return nightsOf.values().stream().mapToInt(Integer::intValue).sum();
    }

    void began(Trouble trouble) {
        beganOf.merge(trouble, 1, Integer::sum);
    }

    void add(Blot blot) {
        blots.computeIfAbsent(blot.key(), key -> new Blots(blot.kind())).add(blot);
        switch (blot.kind()) {
            case WRONG_RELEASE -> wrongReleases++;
            case LOCK_BROKEN -> locksBroken++;
            case FALSE_HOLD -> falseHolds++;
            case FALSE -> {
                Row row = rows.get(FindingKind.valueOf(blot.what()));
                if (blot.trouble() == Trouble.NOTHING) {
                    row.falseAlone++;
                } else {
                    row.falseBeside++;
                }
            }
            case UNNOTICED, LATE -> {}
            case LOST_AGAIN -> rows.get(FindingKind.valueOf(blot.what())).lostAgain++;
            case MISSED -> rows.get(FindingKind.valueOf(blot.what())).missed++;
        }
    }

    void add(Episode episode) {
        Row row = rows.get(episode.kind);
        if (!episode.isFound()) {
            return;
        }
        row.found++;
        row.late += episode.isLate() ? 1 : 0;
        row.delays.add(episode.delaySeconds());
        if (!Double.isNaN(episode.idealSeconds())) {
            row.ideals.add(episode.idealSeconds());
        }
    }

    /** A finding for which no delay is kept. */
    void found(FindingKind kind) {
        rows.get(kind).found++;
    }

    void passage(long millis, boolean sound, boolean lfp) {
        passages++;
        channelHours += millis / 3.6e6;
        soundPassages += sound ? 1 : 0;
        soundLfp += sound && lfp ? 1 : 0;
    }

    void stalledOnSoundLfp() {
        stalledOnSoundLfp++;
    }

    void released(boolean sound, double shareOfLimit) {
        released++;
        soundReleased += sound ? 1 : 0;
        highestReleased = Math.max(highestReleased, shareOfLimit);
        releasedNearLimit += shareOfLimit > NEAR_LIMIT ? 1 : 0;
    }

    void rested(double overVolts, Phase to) {
        rests.add(overVolts, to);
    }

    void swapped(boolean held) {
        swaps++;
        swapsHeld += held ? 1 : 0;
    }

    double channelNights() {
        return channelHours / 24;
    }

    void add(Tally other) {
        other.rows.forEach((kind, row) -> {
            Row mine = rows.get(kind);
            mine.found += row.found;
            mine.missed += row.missed;
            mine.late += row.late;
            mine.lostAgain += row.lostAgain;
            mine.falseAlone += row.falseAlone;
            mine.falseBeside += row.falseBeside;
            mine.delays.addAll(row.delays);
            mine.ideals.addAll(row.ideals);
        });
        other.blots.forEach((key, theirs) ->
                blots.computeIfAbsent(key, none -> new Blots(theirs.kind())).add(theirs));
        other.nightsOf.forEach((trouble, count) -> nightsOf.merge(trouble, count, Integer::sum));
        other.beganOf.forEach((trouble, count) -> beganOf.merge(trouble, count, Integer::sum));
        rests.add(other.rests);
        passages += other.passages;
        soundPassages += other.soundPassages;
        released += other.released;
        soundReleased += other.soundReleased;
        unfinished += other.unfinished;
        wrongReleases += other.wrongReleases;
        locksBroken += other.locksBroken;
        falseHolds += other.falseHolds;
        stalledOnSoundLfp += other.stalledOnSoundLfp;
        soundLfp += other.soundLfp;
        swaps += other.swaps;
        swapsHeld += other.swapsHeld;
        channelHours += other.channelHours;
        highestReleased = Math.max(highestReleased, other.highestReleased);
        releasedNearLimit += other.releasedNearLimit;
    }
}
