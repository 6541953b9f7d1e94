package org.ebbwatch.night;

import java.util.Set;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.FindingKind;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.sim.rack.SimBoard;

/**
 * The person of a night: there from seven to ten at night, does what the judge asks for, hours late, and now and then says
 * what was not done: forgets the bond, leaves it on, reads nought off the meter, takes a cell off early.
 */
final class Person {
    private static final double COMES_HOUR = 7;
    private static final double LEAVES_HOUR = 22;
    private static final long HAND_WORK_MILLIS = 1_800_000;
    private static final long PATIENCE_MILLIS = 86_400_000L;
    private static final double FORGETS_BOND = 0.02;
    private static final double FORGETS_PARTING = 0.01;
    private static final double READS_NOUGHT = 0.03;
    private static final double TAKES_OFF_EARLY = 0.03;
    private static final double SPARK_VOLTS = 0.3;
    private static final double METER_VOLTS = 0.001;

    /** What is to be done at a place. */
    enum Errand {
        NONE,
        PUT_ON,
        TAKE_OFF,
        TIE_OFF,
        METER,
        PART,
        RELEASE,
        DECIDE,
        TURN_AWAY,
        RETAPE,
        BOND_AGAIN,
        TAKE_OFF_EARLY
    }

    private final NightRun night;
    private final SimBoard sim;
    private final Dice dice;
    private final boolean steadfast;
    private final double startHour;

    /** @param steadfast makes no slips and never gives a held cell up that may be drained again */
    Person(NightRun night, SimBoard sim, Dice dice, boolean steadfast) {
        this.night = night;
        this.steadfast = steadfast;
        this.sim = sim;
        this.dice = dice;
        startHour = sim.spec().ambient().startHour();
    }

    /** Looks in at a place. */
    void look(Place place) {
        long now = place.truth.millis();
        if (place.isOver()) {
            return;
        }
        Errand errand = errand(place, now);
        if (errand != place.errand) {
            place.errand = errand;
            place.errandMillis = now + dice.millis(0.01, dice.chance(0.3) ? 9 : 1.5);
        }
        double hour = (startHour + now / 3.6e6) % 24;
        if (errand != Errand.NONE && now >= place.errandMillis && hour >= COMES_HOUR && hour < LEAVES_HOUR) {
            place.errand = Errand.NONE;
            run(errand, place, now);
        }
    }

    private boolean slips(double probability) {
        return dice.chance(probability) && !steadfast;
    }

    private Errand errand(Place place, long now) {
        Set<Wish> wishes = place.judge.standingWishes();
        if (place.judge.phase() == Phase.HELD) {
            return Errand.DECIDE;
        } else if (wishes.contains(Wish.ASK_RELEASE)) {
            return Errand.RELEASE;
        } else if (wishes.contains(Wish.ASK_PART)) {
            return Errand.PART;
        } else if (wishes.contains(Wish.ASK_TIE_OFF)) {
            return Errand.TIE_OFF;
        } else if (wishes.contains(Wish.ASK_METER)) {
            return Errand.METER;
        } else if (wishes.contains(Wish.ASK_TAKE_OFF)) {
            return Errand.TAKE_OFF;
        } else if (wishes.contains(Wish.ASK_PUT_ON)) {
            return Errand.PUT_ON;
        } else if (place.judge.phase() == Phase.CHECK_IN && now > PATIENCE_MILLIS / 4) {
            return Errand.TURN_AWAY;
        } else if (stands(place, FindingKind.TIE_LOOSE)) {
            return Errand.BOND_AGAIN;
        } else if (stands(place, FindingKind.SENSOR_FAULT)) {
            return Errand.RETAPE;
        }
        return now > place.earlyOffMillis ? Errand.TAKE_OFF_EARLY : Errand.NONE;
    }

    private static boolean stands(Place place, FindingKind kind) {
        return place.judge.findings().stream().anyMatch(finding -> finding.kind() == kind);
    }

    private void run(Errand errand, Place place, long now) {
        switch (errand) {
            case PUT_ON -> {
                handLoad(place, true);
                night.act(place, Act.PUT_ON);
                if (slips(TAKES_OFF_EARLY)) {
                    place.earlyOffMillis = now + dice.millis(0.1, 20);
                }
            }
            case TAKE_OFF, TAKE_OFF_EARLY -> {
                place.earlyOffMillis = Long.MAX_VALUE;
                handLoad(place, false);
                night.act(place, Act.TAKE_OFF);
            }
            case TIE_OFF -> tieOff(place, now);
            case METER -> meter(place, now);
            case PART -> {
                if (!slips(FORGETS_PARTING)) {
                    sim.part(place.channel);
                }
                night.act(place, Act.PART);
            }
            case RELEASE -> night.act(place, Act.RELEASE);
            case DECIDE -> decide(place, now);
            case TURN_AWAY -> night.act(place, Act.WITHDRAW);
            case RETAPE -> announce(place, now);
            case BOND_AGAIN -> {
                announce(place, now);
                sim.bond(place.channel);
            }
            case NONE -> {}
        }
    }

    private void tieOff(Place place, long now) {
        if (!place.judge.allowed().contains(Act.TIE_OFF)) {
            return;
        }
        if (place.truth.leadVolts() > SPARK_VOLTS && dice.chance(0.5)) {
            night.act(place, Act.SPARK);
            return;
        }
        announce(place, now);
        if (!slips(FORGETS_BOND)) {
            sim.bond(place.channel);
        }
        sim.contain(place.channel, true);
        night.act(place, Act.TIE_OFF);
    }

    private void meter(Place place, long now) {
        double volts = slips(READS_NOUGHT) ? 0 : terminalVolts(place) + METER_VOLTS * dice.normal();
        night.fold(place, new Entry.Metered(now, volts));
    }

    /** A meter goes on the cell's own terminals, whether or not the channel's leads are on them. */
    private double terminalVolts(Place place) {
        return place.truth.glance().attached()
                ? place.truth.leadVolts()
                : sim.truth(place.channel).openCircuitVolts();
    }

    private void announce(Place place, long now) {
        place.announcedUntilMillis = now + HAND_WORK_MILLIS;
        night.fold(place, new Entry.Announced(now, place.announcedUntilMillis));
    }

    private void handLoad(Place place, boolean on) {
        if (!place.cell.switched()) {
            sim.handLoad(place.channel, on);
        }
    }

    private void decide(Place place, long now) {
        place.timesHeld++;
        boolean mayTry = place.judge.allowed().contains(Act.DRAIN_AGAIN);
        boolean tryAgain = mayTry && (steadfast || (place.timesHeld == 1 && dice.chance(0.5)));
        if (!tryAgain) {
            handLoad(place, false);
            night.act(place, Act.WITHDRAW);
            return;
        }
        announce(place, now);
        sim.part(place.channel);
        sim.contain(place.channel, false);
        handLoad(place, false);
        night.act(place, Act.DRAIN_AGAIN);
    }
}
