package org.ebbwatch.night;

import java.util.Arrays;
import org.ebbwatch.judge.Phase;

/**
 * What became of rests that began with a cell which, by the truth, would rest so far from the limit 24 h later: at least 0.2 V
 * below, less than 0.2 V below, less than 0.2 V above, further above. Nothing was wrong with any of them.
 */
final class Rests {
    static final String[] NAMES = {
        "0.2 V or more below", "less than 0.2 V below", "less than 0.2 V above", "further above"
    };

    private static final double NEAR_VOLTS = 0.2;

    final int[] all = new int[NAMES.length];
    final int[] tiedOff = new int[NAMES.length];
    final int[] sentBack = new int[NAMES.length];
    final int[] held = new int[NAMES.length];

    void add(double overVolts, Phase to) {
        int band = overVolts <= -NEAR_VOLTS ? 0 : overVolts <= 0 ? 1 : overVolts <= NEAR_VOLTS ? 2 : 3;
        all[band]++;
        tiedOff[band] += to == Phase.TIE_OFF ? 1 : 0;
        sentBack[band] += to == Phase.DRAIN ? 1 : 0;
        held[band] += to == Phase.HELD ? 1 : 0;
    }

    void add(Rests other) {
        Arrays.setAll(all, band -> all[band] + other.all[band]);
        Arrays.setAll(tiedOff, band -> tiedOff[band] + other.tiedOff[band]);
        Arrays.setAll(sentBack, band -> sentBack[band] + other.sentBack[band]);
        Arrays.setAll(held, band -> held[band] + other.held[band]);
    }
}
