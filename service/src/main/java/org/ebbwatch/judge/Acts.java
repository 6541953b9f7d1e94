package org.ebbwatch.judge;

import java.util.EnumSet;
import org.ebbwatch.judge.Outcome.Wish;

/** What a person may do to a passage in each phase, and what follows from it. Nothing else is ever done by hand. */
final class Acts {
    private final Passage passage;

    Acts(Passage passage) {
        this.passage = passage;
    }

    EnumSet<Act> allowed() {
        EnumSet<Act> acts = EnumSet.noneOf(Act.class);
        switch (passage.phase()) {
            case CHECK_IN -> acts.add(Act.PUT_ON);
            case DRAIN -> {
                acts.add(Act.TAKE_OFF);
                addIf(!passage.cell().switched(), Act.PUT_ON, acts);
            }
            case REST -> {
                acts.add(Act.SPARK);
                addIf(isRested(), Act.TIE_OFF, acts);
            }
            case TIE_OFF -> {
                acts.add(Act.SPARK);
                addIf(isWatched(), Act.PART, acts);
                addIf(isReleasable(), Act.RELEASE, acts);
            }
            case HELD -> {
                addIf(passage.load().canBeTakenOff(), Act.TAKE_OFF, acts);
                addIf(mayDrainAgain(), Act.DRAIN_AGAIN, acts);
            }
            case RELEASED, WITHDRAWN -> {
                return acts;
            }
        }
        acts.add(Act.WITHDRAW);
        return acts;
    }

    private static void addIf(boolean may, Act act, EnumSet<Act> acts) {
        if (may) {
            acts.add(act);
        }
    }

    private boolean isRested() {
        return passage.watch().isAsked(Wish.ASK_TIE_OFF) && passage.isSeenEmpty();
    }

    private boolean isWatched() {
        return passage.isBonded() && passage.watch().isAsked(Wish.ASK_PART);
    }

    private boolean isReleasable() {
        return !passage.isBonded() && passage.watch().isAsked(Wish.ASK_RELEASE) && passage.isSeenEmpty();
    }

    private boolean mayDrainAgain() {
        boolean reversed = passage.findings().stands(FindingKind.REVERSED);
        boolean hot = passage.findings().stands(FindingKind.HOT);
        return passage.polarity().isProven()
                && !passage.cell().owesLoad()
                && !reversed
                && !(hot && !passage.channel().heat().isCalm());
    }

    /** Does what is {@link #allowed()}. */
    void take(Act act) {
        switch (act) {
            case PUT_ON -> putOn();
            case TAKE_OFF -> takeOff();
            case TIE_OFF -> passage.tieOff();
            case SPARK -> {
                passage.rounds().cameBack();
                passage.channel().gaps().forget();
                passage.drainAgain("sparked when bonded");
            }
            case PART -> passage.part();
            case RELEASE -> passage.enter(Phase.RELEASED, "parted, open, attached and below the rested limit");
            case WITHDRAW -> {
                passage.wantLoad(false);
                passage.enter(Phase.WITHDRAWN, "withdrawn by a person");
            }
            case DRAIN_AGAIN -> {
                passage.unbar();
                passage.findings().clearLatched();
                passage.channel().trustAgain();
                passage.rounds().decided(passage.lastMillis());
                passage.drainAgain("a person decided to drain again");
            }
        }
    }

    private void putOn() {
        passage.unbar();
        boolean byHand = !passage.cell().switched();
        if (passage.phase() == Phase.DRAIN) {
            passage.load().byHand(byHand);
            passage.watch().takeBack(Wish.ASK_PUT_ON);
        } else if (passage.polarity().isProven()) {
            passage.load().byHand(byHand);
            passage.drainAgain("load put on");
        } else {
            passage.hold("not proven: never seen above 1 V with the right polarity");
        }
    }

    private void takeOff() {
        passage.load().byHand(false);
        if (passage.phase() == Phase.DRAIN) {
            passage.enterRest(passage.rounds().isHoldDone() ? "taken off after its hold" : "taken off early");
        } else {
            passage.openLoad();
        }
    }
}
