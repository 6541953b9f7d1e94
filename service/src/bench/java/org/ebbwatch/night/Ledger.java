package org.ebbwatch.night;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleSupplier;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome.PhaseChanged;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.sim.cell.Chemistry;

/** Holds one passage's findings, transitions and wishes against the truth of its channel. For one thread. */
final class Ledger {
    /** The false-alarm rate that the ideal observer is allowed, one in a thousand nights of scans a second: ln(1000 * 86400). */
    static final double IDEAL_THRESHOLD = 18.3;

    private static final double COUNT_VOLTS = 1e-4;
    private static final double COUNT_KELVIN = 0.02;
    private static final double FORECAST_VOLTS = 0.02;
    private static final long DAY_MILLIS = 86_400_000;
    private static final double LATE_SECONDS = 3 * 3600;

    private final NightPlan plan;
    private final int channel;
    private final Trouble trouble;
    private final Judge judge;
    private final Tally tally;
    private final Due due;
    private final Map<FindingKind, Episode> episodes = new EnumMap<>(FindingKind.class);
    private final Episode[] all;
    private final Set<FindingKind> seen = EnumSet.noneOf(FindingKind.class);
    private final double voltsNoise;
    private final double celsiusNoise;
    private boolean begun;
    private boolean standing;
    private double excessAtOnset;
    private double voltsAtOnset;
    private boolean locked;
    private boolean lockedBefore;
    private boolean switchWasClosed;
    private boolean heldForSwap;
    private boolean stalled;
    private boolean neighbourHeats;
    private double restsAtVolts = Double.NaN;

    Ledger(NightPlan plan, int channel, Judge judge, Tally tally, double offsetVolts) {
        this.plan = plan;
        this.channel = channel;
        this.judge = judge;
        this.tally = tally;
        Trouble own = plan.mishap().trouble();
        trouble = channel == 0 || own.ofBoard ? own : Trouble.NOTHING;
        due = new Due(plan, offsetVolts);
        voltsNoise = withCount(plan.voltsNoise(), COUNT_VOLTS);
        celsiusNoise = withCount(plan.celsiusNoise(), COUNT_KELVIN);
        for (FindingKind kind : FindingKind.values()) {
            if (Due.patienceMillis(kind) < Long.MAX_VALUE) {
                episodes.put(kind, new Episode(kind, IDEAL_THRESHOLD));
            }
        }
        all = episodes.values().toArray(Episode[]::new);
        if (own.stages().isEmpty()) {
            begun = true;
            standing = true;
        }
    }

    private static double withCount(double noise, double count) {
        return StrictMath.sqrt(noise * noise + count * count / 12);
    }

    Trouble trouble() {
        return begun ? trouble : Trouble.NOTHING;
    }

    boolean isSound() {
        return trouble == Trouble.NOTHING;
    }

    private boolean isLfp() {
        return plan.cells().get(channel).spec().chemistry() == Chemistry.LFP;
    }

    /** The trouble begins; only called where it concerns this channel. */
    void begins(Truth truth) {
        neighbourHeats = channel != 0 && plan.mishap().trouble().heats();
        if (trouble == Trouble.NOTHING) {
            return;
        }
        begun = true;
        standing = true;
        tally.began(trouble);
        excessAtOnset = truth.excessKelvin();
        voltsAtOnset = truth.leadVolts();
        due.begins(truth);
        if (trouble.heats()) {
            episodes.get(FindingKind.HOT).starts(truth.millis());
            episodes.get(FindingKind.WARMING).starts(truth.millis());
        }
    }

    void ends() {
        standing = false;
    }

    void interrupted(long millis) {
        due.interrupted(millis);
    }

    /** One scan, after it was judged. */
    void scan(Truth truth, boolean switchClosed) {
        due.follow(truth);
        if (lockedBefore && locked && switchClosed && !switchWasClosed) {
            blot(Blot.Kind.LOCK_BROKEN, "load closed", truth, "the switch closed while locked");
        }
        switchWasClosed = switchClosed;
        lockedBefore = locked;
        Trouble now = standing ? trouble : Trouble.NOTHING;
        boolean asked = !truth.glance().attached() && isAskedForVerdict();
        if (trouble.loosensLead()
                && !truth.glance().attached()
                && (truth.stage() == Stage.REST || truth.stage() == Stage.PARTED)) {
            episodes.get(FindingKind.LEAD_OPEN).starts(truth.millis());
        }
        for (Episode episode : all) {
            boolean isDue = due.isDue(episode.kind, truth, now, asked);
            episode.follow(truth.millis(), isDue, isDue && stands(episode.kind));
            if (episode.hasStarted()) {
                tell(episode, truth);
            }
        }
    }

    private boolean isAskedForVerdict() {
        return judge.standingWishes().contains(Wish.ASK_TIE_OFF)
                || judge.standingWishes().contains(Wish.ASK_RELEASE);
    }

    private boolean stands(FindingKind kind) {
        if (kind != FindingKind.HOT && kind != FindingKind.WARMING && judge.phase() == Phase.HELD) {
            return true;
        }
        for (Finding finding : judge.findings()) {
            if (finding.kind() == kind) {
                return true;
            }
        }
        return false;
    }

    private void tell(Episode episode, Truth truth) {
        switch (episode.kind) {
            case HOT, WARMING ->
                episode.tells(truth.millis(), trouble.heats() ? truth.excessKelvin() - excessAtOnset : 0, celsiusNoise);
            case REVERSED, TIE_LOOSE -> episode.tells(truth.millis(), truth.leadVolts(), voltsNoise);
            case CUT_OFF -> episode.tells(truth.millis(), due.untrippedVolts(), voltsNoise);
            case LOAD_LOST -> episode.tells(truth.millis(), truth.leadVolts() - voltsAtOnset, voltsNoise);
            default -> {}
        }
    }

    void raised(Finding finding, Truth truth, DoubleSupplier restedVolts) {
        FindingKind kind = finding.kind();
        if (kind.isLatched()) {
            locked = true;
        }
        boolean excused = (begun && trouble.explains(kind)) || due.isBorneOut(kind, truth);
        excused |= kind == FindingKind.WARMING && neighbourHeats;
        if (kind == FindingKind.REBOUND && !excused) {
            excused = restedVolts.getAsDouble() > plan.procedure().rest().limitVolts() - FORECAST_VOLTS;
        }
        Episode episode = episodes.get(kind);
        if (episode == null && excused && seen.add(kind)) {
            tally.found(kind);
        }
        if (episode != null && excused) {
            episode.starts(truth.millis());
            episode.found(truth.millis());
        }
        if (kind == FindingKind.STALLED && isSound() && isLfp() && !stalled) {
            stalled = true;
            tally.stalledOnSoundLfp();
        }
        if (!excused) {
            blot(Blot.Kind.FALSE, kind.name(), truth, finding.line());
        }
    }

    void changed(PhaseChanged change, Truth truth, DoubleSupplier restedVolts) {
        if (change.from() == Phase.REST && !Double.isNaN(restsAtVolts)) {
            tally.rested(restsAtVolts - plan.procedure().rest().limitVolts(), change.to());
        }
        boolean comparable = change.to() == Phase.REST && trouble() == Trouble.NOTHING && restsForADay();
        restsAtVolts = comparable ? restedVolts.getAsDouble() : Double.NaN;
        if (change.to() != Phase.HELD) {
            return;
        }
        locked = true;
        if (trouble.loosensLead() && begun) {
            episodes.get(FindingKind.LEAD_OPEN).found(truth.millis());
        }
        if (begun && trouble == Trouble.LOAD_WELDED) {
            episodes.get(FindingKind.LOAD_STUCK).found(truth.millis());
        }
        if (begun && trouble == Trouble.SWAPPED_UNSEEN) {
            heldForSwap = true;
        }
        boolean explained = begun
                && (trouble.explains(FindingKind.LEAD_OPEN)
                        || trouble.explains(FindingKind.CUT_OFF)
                        || trouble.explains(FindingKind.LOAD_LOST));
        if (change.reason().startsWith("another cell?") && !explained) {
            blot(Blot.Kind.FALSE_HOLD, "another cell?", truth, change.reason());
        }
    }

    private boolean restsForADay() {
        return plan.procedure().rest().leastMillis() == DAY_MILLIS;
    }

    /** A person decided that it goes on. */
    void decided() {
        locked = false;
        lockedBefore = false;
    }

    void closeWished(Truth truth) {
        if (locked) {
            blot(Blot.Kind.LOCK_BROKEN, "load asked for", truth, "CLOSE_LOAD was wished while locked");
        }
    }

    /** The cell was released; {@code restedVolts} is what it would show after 24 h more. */
    void released(Truth truth, double restedVolts) {
        double limit = plan.procedure().rest().limitVolts();
        tally.released(isSound(), Math.abs(restedVolts) / limit);
        if (!(Math.abs(restedVolts) <= limit)) {
            String line = String.format(Locale.ROOT, "rests at %.3f V, limit %.2f V", restedVolts, limit);
            blot(Blot.Kind.WRONG_RELEASE, plan.procedure().name(), truth, line);
        } else if (!truth.glance().attached()) {
            blot(Blot.Kind.MISSED, "LEAD_OPEN", truth, "released with its lead off, though empty");
        }
    }

    /** The night is over. */
    void close(Truth truth) {
        for (Episode episode : episodes.values()) {
            if (episode.isMissed()) {
                blot(Blot.Kind.MISSED, episode.kind.name(), truth, "not found");
            } else if (episode.isLostAgain()) {
                blot(Blot.Kind.LOST_AGAIN, episode.kind.name(), truth, "found, gone, and not found again while due");
            }
            tally.add(episode);
        }
        Episode lead = episodes.get(FindingKind.LEAD_OPEN);
        if (lead.isFound() && lead.delaySeconds() > LATE_SECONDS) {
            String line = String.format(Locale.ROOT, "found after %.1f h", lead.delaySeconds() / 3600);
            blot(Blot.Kind.LATE, "LEAD_OPEN", truth, line);
        }
        if (begun && trouble == Trouble.SWAPPED_UNSEEN) {
            tally.swapped(heldForSwap);
            if (!heldForSwap) {
                blot(Blot.Kind.UNNOTICED, "another cell", truth, "ended in " + judge.phase());
            }
        }
        tally.passage(truth.millis(), isSound(), isLfp());
    }

    private void blot(Blot.Kind kind, String what, Truth truth, String line) {
        String where = String.format(
                Locale.ROOT,
                "%s [%s, %.3f V at the leads, cell %.1f degC, sensor %.1f, room %.1f, noise %.2f mV, %.2f K]",
                line,
                truth.stage(),
                truth.leadVolts(),
                truth.glance().cellCelsius(),
                truth.glance().sensorCelsius(),
                truth.airCelsius(),
                1000 * plan.voltsNoise(),
                plan.celsiusNoise());
        tally.add(new Blot(kind, what, trouble(), plan.seed(), channel, truth.millis() / 3.6e6, where));
    }
}
