package org.ebbwatch.sim.scenario;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.cell.SlowShare;

/** What is on a board that lists no channels: sixteen cells on switched loads of C/6, both chemistries and both relaxations. */
final class UsualRack {
    private static final int CELLS = 16;
    private static final double[] RATED_AMPERE_HOURS = {2.6, 3.4, 1.5, 2.2};

    private UsualRack() {}

    static List<ChannelSpec> channels() {
        List<ChannelSpec> channels = new ArrayList<>();
        for (int i = 0; i < CELLS; i++) {
            Chemistry chemistry = i % 4 == 2 ? Chemistry.LFP : Chemistry.NMC;
            double rated = RATED_AMPERE_HOURS[i % RATED_AMPERE_HOURS.length];
            CellSpec.Builder cell = CellSpec.build("cell " + (i + 1), chemistry, rated)
                    .spread(0.05)
                    .stateOfCharge(0.3 + 0.04 * (i % 8));
            if (i % 2 == 1) {
                cell.diffusion();
            }
            if (i == 7) {
                cell.slowShare(SlowShare.TYPICAL);
            }
            channels.add(ChannelSpec.switched(cell.done(), Math.rint(220 / rated) / 10));
        }
        return channels;
    }
}
