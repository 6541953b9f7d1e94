package org.ebbwatch.profile.modbus;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Which units fail, for how many rounds and why. Pure. */
final class UnitHealth {
    private static final int REMARKED_AFTER_ROUNDS = 3;

    private final Map<Integer, Integer> failingRounds = new TreeMap<>();
    private final Map<Integer, String> whyNow = new TreeMap<>();
    private Set<Integer> silentBefore = new TreeSet<>();
    private Set<Integer> silentNow = new TreeSet<>();

    /** A round begins; what the one before found is counted. */
    void roundBegins() {
        failingRounds.keySet().retainAll(whyNow.keySet());
        whyNow.clear();
        silentBefore = silentNow;
        silentNow = new TreeSet<>();
    }

    /** Something of a unit could not be read in this round. */
    void failed(int unitId, String why) {
        if (whyNow.putIfAbsent(unitId, why) == null) {
            failingRounds.merge(unitId, 1, Integer::sum);
        }
    }

    /** A unit did not answer in this round. */
    void silent(int unitId) {
        silentNow.add(unitId);
    }

    /** Whether a unit did not answer in the round before this one. */
    boolean wasSilent(int unitId) {
        return silentBefore.contains(unitId);
    }

    /** What a person should know: why each unit fails that has failed for three rounds; empty where none has. */
    String remark() {
        StringBuilder remark = new StringBuilder();
        whyNow.forEach((unitId, why) -> {
            if (failingRounds.get(unitId) >= REMARKED_AFTER_ROUNDS) {
                remark.append(remark.isEmpty() ? "" : " ").append(why);
            }
        });
        return remark.toString();
    }
}
