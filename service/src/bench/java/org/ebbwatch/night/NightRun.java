package org.ebbwatch.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Outcome.PhaseChanged;
import org.ebbwatch.judge.Outcome.Raised;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Outcome.Wished;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.rack.SimBoard;

/**
 * One night from check-in to the end of both passages: a simulated board, two judges, a person, and the ledgers. Scans come
 * every second from a minute before the mishap until well after it and for two minutes after a load was switched, otherwise
 * every {@link NightPlan#calmIntervalMillis()}: the judge is told nothing of it, to it they are the board's scans.
 */
final class NightRun {
    private static final long AFTER_SWITCH_MILLIS = 120_000;
    private static final long BEFORE_MISHAP_MILLIS = 60_000;
    private static final long AFTER_MISHAP_MILLIS = 600_000;
    private static final long AFTER_HEATING_MILLIS = 2_400_000;
    private static final long LOOK_MILLIS = 120_000;
    private static final long SILENT_MILLIS = 5_000;
    private static final long NEVER = Long.MAX_VALUE / 2;

    private final NightPlan plan;
    private final SimBoard sim;
    private final Shell shell;
    private final Person person;
    private final Dice dice;
    private final Tally tally;
    private final Consumer<String> log;
    private final Onlooker onlooker;
    private final List<Place> places = new ArrayList<>();
    private final int ambientChannel;
    private final int dummyChannel;
    private final int bankChannel;
    private long fastUntilMillis = AFTER_SWITCH_MILLIS;
    private long onsetMillis = NEVER;
    private long endMillis = NEVER;
    private boolean begun;
    private boolean ended;
    private long heardMillis;
    private boolean silenceTold;
    private double airCelsius;
    private double dummyCelsius;
    private double bankCelsius;

    /** @param log takes a line for all that happens, for a night that is looked at */
    NightRun(NightPlan plan, Tally tally, Consumer<String> log) {
        this(plan, tally, log, (channel, millis, event) -> {});
    }

    NightRun(NightPlan plan, Tally tally, Consumer<String> log, Onlooker onlooker) {
        this.plan = plan;
        this.onlooker = onlooker;
        this.tally = tally;
        this.log = log;
        sim = new SimBoard(plan.board(), plan.seed(), 1, plan.calmIntervalMillis());
        shell = new Shell(sim);
        dice = new Dice(plan.seed() ^ 0x5DEE_CE66DL);
        person = new Person(this, sim, dice, plan.conduct().steadfast());
        ambientChannel = plan.cells().size();
        dummyChannel = plan.hasDummy() ? ambientChannel + 1 : -1;
        bankChannel = plan.board().channels().size() - 1;
        for (int channel = 0; channel < plan.cells().size(); channel++) {
            CellPlan cell = plan.cells().get(channel);
            Judge judge = new Judge(cell.card(), plan.procedure());
            Ledger ledger = new Ledger(plan, channel, judge, tally, shell.expandedVolts(0));
            places.add(new Place(channel, cell, judge, ledger));
        }
    }

    void run() {
        tally.night(plan.mishap().trouble());
        long look = LOOK_MILLIS;
        while (sim.eventMillis() < plan.conduct().longestMillis() && !isOver()) {
            long interval = intervalMillis();
            if (interval != sim.intervalMillis() && !sim.isSilent()) {
                shell.setInterval(interval);
            }
            long now = sim.step();
            mishap(now);
            shell.exchange();
            if (sim.isSilent()) {
                silent(now);
                continue;
            }
            if (plan.lostShare() > 0 && dice.chance(plan.lostShare())) {
                continue;
            }
            heard(now);
            if (now >= look) {
                look = now + LOOK_MILLIS;
                places.forEach(person::look);
            }
        }
        for (Place place : places) {
            if (!place.isOver()) {
                tally.unfinished++;
            }
            place.ledger.close(place.truth);
        }
    }

    private boolean isOver() {
        for (Place place : places) {
            if (!place.isOver()) {
                return false;
            }
        }
        return true;
    }

    private long intervalMillis() {
        long next = sim.eventMillis() + plan.calmIntervalMillis();
        long after = plan.mishap().trouble().heats() ? AFTER_HEATING_MILLIS : AFTER_MISHAP_MILLIS;
        boolean nearMishap = next >= onsetMillis - BEFORE_MISHAP_MILLIS && next <= onsetMillis + after;
        boolean nearEnd = next >= endMillis - BEFORE_MISHAP_MILLIS && next <= endMillis + AFTER_MISHAP_MILLIS;
        return nearMishap || nearEnd || next <= fastUntilMillis
                ? plan.conduct().fastMillis()
                : plan.calmIntervalMillis();
    }

    /** Plans the mishap once its stage is reached, and tells the ledgers when it begins and ends. */
    private void mishap(long now) {
        Mishap mishap = plan.mishap();
        Place first = places.get(0);
        if (onsetMillis == NEVER
                && first.truth != null
                && !mishap.trouble().stages().isEmpty()) {
            if (first.truth.stage() == mishap.stage()) {
                onsetMillis = now + BEFORE_MISHAP_MILLIS + mishap.offsetMillis();
                endMillis = mishap.lastsMillis() == Fault.FOR_EVER ? NEVER : onsetMillis + mishap.lastsMillis();
                sim.addFault(mishap.fault(onsetMillis(mishap)));
                if (mishap.trouble() == Trouble.SWAPPED_UNSEEN) {
                    Fault silence = Fault.onBoard(FaultKind.SILENT, Trigger.at(onsetMillis));
                    sim.addFault(silence.lasting(mishap.lastsMillis()));
                }
            }
        }
        boolean concerned = mishap.trouble().ofBoard || !first.isOver();
        if (!begun && now >= onsetMillis && concerned) {
            begun = true;
            log.accept(line(now, "-- " + mishap));
            for (Place place : places) {
                if (!place.isOver() && place.truth != null) {
                    look();
                    place.truth = truth(place, now);
                    place.ledger.begins(place.truth);
                }
            }
        }
        if (begun && !ended && now >= endMillis) {
            ended = true;
            log.accept(line(now, "-- over"));
            places.forEach(place -> place.ledger.ends());
        }
    }

    private long onsetMillis(Mishap mishap) {
        return mishap.trouble() == Trouble.SWAPPED_UNSEEN ? onsetMillis + mishap.lastsMillis() / 2 : onsetMillis;
    }

    private void silent(long now) {
        shell.forget();
        long silence = heardMillis + Math.max(SILENT_MILLIS, 3 * sim.intervalMillis());
        if (!silenceTold && now >= silence) {
            silenceTold = true;
            places.forEach(place -> fold(place, new Entry.Silence(now)));
        }
    }

    private void heard(long now) {
        long missing = now - heardMillis;
        heardMillis = now;
        shell.look();
        look();
        boolean restarted = silenceTold && plan.mishap().trouble() == Trouble.BOARD_RESTARTS;
        for (Place place : places) {
            if (place.isOver()) {
                continue;
            }
            if (silenceTold) {
                long most = restarted ? missing + dice.millis(0, 0.1) : missing;
                fold(place, new Entry.Gap(now, missing, most));
                place.ledger.interrupted(now);
                if (restarted) {
                    fold(place, new Entry.Reboot(now));
                }
            }
            place.truth = truth(place, now);
            Entry.Scan scan = shell.scan(place.channel, now);
            fold(place, scan);
            place.ledger.scan(place.truth, scan.loadApplied());
        }
        silenceTold = false;
        for (Shell.Answer answer = shell.answer(); answer != null; answer = shell.answer()) {
            fold(places.get(answer.channel()), new Entry.LeadChecked(now, answer.proof()));
        }
    }

    private void look() {
        airCelsius = sim.glance(ambientChannel).sensorCelsius();
        dummyCelsius = dummyChannel < 0 ? Double.NaN : sim.glance(dummyChannel).sensorCelsius();
        bankCelsius = sim.glance(bankChannel).sensorCelsius();
    }

    private Truth truth(Place place, long now) {
        return Truth.of(
                now,
                sim.glance(place.channel),
                airCelsius,
                dummyCelsius,
                bankCelsius,
                place.judge,
                now < place.announcedUntilMillis);
    }

    /** Does what a person may do now, and nothing else. */
    void act(Place place, Act act) {
        if (!place.judge.allowed().contains(act)) {
            return;
        }
        log.accept(line(sim.eventMillis(), place.channel + " acts " + act));
        if (act == Act.DRAIN_AGAIN) {
            place.ledger.decided();
        }
        fold(place, new Entry.Acted(sim.eventMillis(), act));
        if (place.judge.phase() == Phase.RELEASED) {
            place.ledger.released(place.truth, sim.truth(place.channel).restedVoltsAfter24h());
        }
    }

    /** Folds an entry, and carries out what is wished. */
    void fold(Place place, Entry entry) {
        if (place.isOver()) {
            return;
        }
        Outcome outcome = place.judge.fold(entry);
        for (Outcome.Event event : outcome.events()) {
            onlooker.sees(place.channel, sim.eventMillis(), event);
            if (event instanceof Wished wished) {
                carryOut(place, wished.wish());
            } else if (event instanceof Raised raised) {
                log.accept(line(
                        sim.eventMillis(),
                        place.channel + " " + raised.finding().kind() + " "
                                + raised.finding().line()));
                place.ledger.raised(raised.finding(), place.truth, () -> sim.truth(place.channel)
                        .restedVoltsAfter24h());
            } else if (event instanceof PhaseChanged changed) {
                log.accept(line(
                        sim.eventMillis(),
                        place.channel + " " + changed.from() + " to " + changed.to() + ": " + changed.reason()));
                place.ledger.changed(
                        changed, place.truth, () -> sim.truth(place.channel).restedVoltsAfter24h());
            } else if (event instanceof Outcome.Cleared cleared) {
                log.accept(line(sim.eventMillis(), place.channel + " cleared " + cleared.kind()));
            }
        }
    }

    private void carryOut(Place place, Wish wish) {
        switch (wish) {
            case CLOSE_LOAD, OPEN_LOAD -> {
                boolean closed = wish == Wish.CLOSE_LOAD;
                if (closed) {
                    place.ledger.closeWished(place.truth);
                }
                shell.setLoad(place.channel, closed);
                fastUntilMillis = sim.eventMillis() + AFTER_SWITCH_MILLIS;
            }
            case CHECK_LEAD -> {
                if (!shell.checkLead(place.channel)) {
                    fold(place, new Entry.LeadChecked(sim.eventMillis(), Entry.LeadProof.NOT_DONE));
                }
            }
            default -> log.accept(line(sim.eventMillis(), place.channel + " asks " + wish));
        }
    }

    private static String line(long millis, String what) {
        return String.format(Locale.ROOT, "%9.3f h %s", millis / 3.6e6, what);
    }
}
