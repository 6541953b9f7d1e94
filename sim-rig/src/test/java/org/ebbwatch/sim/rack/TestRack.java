package org.ebbwatch.sim.rack;

import java.util.List;
import org.ebbwatch.sim.TestHost;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.scenario.AmbientSpec;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;

/** Small boards for tests, and a board together with its host. */
final class TestRack {
    static final double LOAD_OHMS = 10;
    static final AmbientSpec STEADY = new AmbientSpec(21, 0, 9);

    final SimBoard board;
    final TestHost host = new TestHost();

    TestRack(BoardSpec spec) {
        this(spec, 1_000);
    }

    TestRack(BoardSpec spec, long intervalMillis) {
        board = new SimBoard(spec, 7, 1, intervalMillis);
        host.hear(board);
    }

    static CellSpec.Builder nmc(String tag) {
        return CellSpec.build(tag, Chemistry.NMC, 2.6).stateOfCharge(0.5);
    }

    static CellSpec.Builder lfp(String tag) {
        return CellSpec.build(tag, Chemistry.LFP, 2.6).stateOfCharge(0.5);
    }

    /** One cell on a switched load of 10 ohms; then ambient, dummy and bank. */
    static BoardSpec.Builder one(CellSpec cell) {
        return board(ChannelSpec.switched(cell, LOAD_OHMS));
    }

    static BoardSpec.Builder board(ChannelSpec... channels) {
        return BoardSpec.build("SIM-T", List.of(channels)).ambient(STEADY);
    }

    /** One half-full cell that something goes wrong with. */
    static TestRack with(Fault... faults) {
        return new TestRack(one(nmc("a").done())
                .measuresAmperes(true)
                .faults(List.of(faults))
                .done());
    }

    void run(double seconds) {
        host.run(board, seconds);
    }

    boolean suffers(int channel, FaultKind kind) {
        return board.truth(channel).activeFaults().contains(kind);
    }
}
