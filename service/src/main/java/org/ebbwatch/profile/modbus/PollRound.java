package org.ebbwatch.profile.modbus;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * One scan of all units: what is still to be read, and what was. A request without a usable answer is made again as often as the
 * profile says; a unit that then still is silent is asked nothing more in this round, and one that was silent in the last round is
 * asked once only, so that it does not hold up the others. Pure.
 */
final class PollRound {
    private final ModbusProfile profile;
    private final LoadStates loads;
    private final UnitHealth health;
    private final Deque<Span> left;
    private final Set<Integer> silentUnits = new TreeSet<>();
    private final double[] raws;
    private int contacts;
    private int attempts;
    private boolean heard;

    PollRound(ModbusProfile profile, List<Span> plan, LoadStates loads, UnitHealth health) {
        this.profile = profile;
        this.loads = loads;
        this.health = health;
        this.left = new ArrayDeque<>(plan);
        this.raws = new double[profile.registers().size()];
        Arrays.fill(raws, Double.NaN);
        health.roundBegins();
    }

    /** Whether every unit was read, or given up. */
    boolean isOver() {
        return left.isEmpty();
    }

    /** What to ask now; only while the round is not over. */
    Request next() {
        return Request.read(left.getFirst());
    }

    /** The answer to {@link #next}. */
    void take(Answer answer) {
        Span block = left.getFirst();
        attempts++;
        heard |= answer instanceof Answer.Data || answer instanceof Answer.Refused;
        if (answer instanceof Answer.Data data) {
            keep(block, data.data());
        } else if (mayBeAskedAgain(block, answer)) {
            return;
        } else {
            giveUp(block, answer);
        }
        left.removeFirst();
        left.removeIf(span -> silentUnits.contains(span.from().unitId()));
        attempts = 0;
    }

    /** Whether any unit answered anything. */
    boolean heard() {
        return heard;
    }

    /** The raw numbers; NaN for what was not read. */
    double[] raws() {
        return raws;
    }

    /** Bit n is 1 where contact input n was read as closed. */
    int contacts() {
        return contacts;
    }

    private boolean mayBeAskedAgain(Span block, Answer answer) {
        boolean tries = !(answer instanceof Answer.Refused) && attempts <= profile.retries();
        return tries && !health.wasSilent(block.from().unitId());
    }

    private void giveUp(Span block, Answer answer) {
        int unitId = block.from().unitId();
        health.failed(unitId, "Reading " + block + " was " + answer + ".");
        if (answer instanceof Answer.Silent) {
            silentUnits.add(unitId);
            health.silent(unitId);
        }
    }

    private void keep(Span block, byte[] data) {
        if (block.from().table().isBits()) {
            loads.read(block, data);
            for (int i = 0; i < profile.contacts().size(); i++) {
                Spot contact = profile.contacts().get(i);
                contacts |= block.contains(contact) && block.bit(contact, data) ? 1 << i : 0;
            }
            return;
        }
        for (int i = 0; i < raws.length; i++) {
            Register register = profile.registers().get(i);
            if (block.contains(register.at())) {
                raws[i] = register.in(block, data);
            }
        }
    }
}
