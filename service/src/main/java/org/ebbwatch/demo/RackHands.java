package org.ebbwatch.demo;

import java.util.function.Consumer;
import org.ebbwatch.judge.Act;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.rack.RunningRack;
import org.ebbwatch.sim.rack.SimBoard;

/** Hands at a simulated rack whose service is running. */
final class RackHands implements Hands {
    private final RunningRack rack;
    private final SimulatedRack boards;

    RackHands(RunningRack rack, SimulatedRack boards) {
        this.rack = rack;
        this.boards = boards;
    }

    @Override
    public void act(PassageView passage, Act act) {
        rack.with(watch -> watch.act(passage.id(), act));
    }

    @Override
    public void announce(PassageView passage, long forMillis) {
        rack.with(watch -> {
            watch.announced(passage.id(), forMillis);
            return null;
        });
    }

    @Override
    public void bond(PassageView passage) {
        atTheBoard(passage, board -> {
            board.bond(passage.channel());
            board.contain(passage.channel(), true);
        });
    }

    @Override
    public void meter(PassageView passage) {
        double volts = boards.board(passage.board())
                .call(board -> Technician.meterVolts(board.truth(passage.channel())))
                .join();
        rack.with(watch -> {
            watch.metered(passage.id(), volts);
            return null;
        });
    }

    @Override
    public void part(PassageView passage) {
        atTheBoard(passage, board -> board.part(passage.channel()));
    }

    private void atTheBoard(PassageView passage, Consumer<SimBoard> what) {
        boards.board(passage.board())
                .call(board -> {
                    what.accept(board);
                    return board;
                })
                .join();
    }
}
