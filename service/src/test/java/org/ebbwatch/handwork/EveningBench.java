package org.ebbwatch.handwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.OutletMessage;
import org.ebbwatch.evening.EveningCheck;
import org.ebbwatch.evening.EveningReply;
import org.ebbwatch.evening.rule.Matter;
import org.ebbwatch.evening.rule.Point;
import org.ebbwatch.evening.rule.Proof;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.ContactInput;
import org.ebbwatch.passage.DeskAnswer;
import org.ebbwatch.passage.DeskRequest.CheckIn;
import org.ebbwatch.passage.DeskRequest.Do;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A rack in the evening: a switched cell and a hand-loaded one draining, a third just checked in, one outlet. */
abstract class EveningBench {
    static final int SWITCHED = 0;
    static final int BY_HAND = 1;
    static final int FRESH = 2;
    static final long MINUTE = 60_000;

    @TempDir
    Path records;

    QuietRack rack;
    boolean outletAway;
    final List<OutletMessage> delivered = new ArrayList<>();
    private int keys;

    @BeforeEach
    void two_cells_drain_and_a_third_waits() {
        rack = QuietRack.of(board(), records, List.of(new Telephone()), contacts());
        checkIn(SWITCHED, "A", true);
        checkIn(BY_HAND, "B", false);
        checkIn(FRESH, "C", true);
        rack.pass(5 * MINUTE);
        act(SWITCHED, Act.PUT_ON);
        rack.hands().handLoad(BY_HAND, true);
        act(BY_HAND, Act.PUT_ON);
        rack.pass(30 * MINUTE);
    }

    @AfterEach
    void close() {
        rack.close();
    }

    BoardSpec board() {
        return BoardSpec.build(
                        "EB-1",
                        List.of(
                                ChannelSpec.switched(
                                        CellSpec.build("A", NMC, 2.0).done(), 22),
                                ChannelSpec.byHand(CellSpec.build("B", NMC, 2.0).done(), 22),
                                ChannelSpec.switched(
                                        CellSpec.build("C", NMC, 2.0).done(), 22)))
                .thermometers(true, false, 0, false)
                .contactInputs(2)
                .done();
    }

    List<ContactInput> contacts() {
        return List.of();
    }

    void checkIn(int channel, String tag, boolean switched) {
        var card = new CellCard(tag, Chemistry.LAYERED_OXIDE, 2.0, 22, switched, false);
        assertThat(rack.ask(new CheckIn(QuietRack.BOARD, channel, card, Procedure.careful()), key()))
                .isInstanceOf(DeskAnswer.Done.class);
    }

    DeskAnswer act(int channel, Act act) {
        PassageView cell = cell(channel);
        return rack.ask(new Do(cell.id(), cell.sequence(), act), key());
    }

    PassageView cell(int channel) {
        return rack.view().on(QuietRack.BOARD, channel).orElseThrow();
    }

    private String key() {
        return "evening-request-" + ++keys;
    }

    void fault(int channel, FaultKind kind) {
        rack.hands().addFault(Fault.on(channel, kind, Trigger.at(0)));
    }

    /** For faults that end: their time counts from here. */
    Trigger now() {
        return Trigger.at(rack.hands().eventMillis());
    }

    void boardFault(FaultKind kind) {
        rack.hands().addFault(Fault.onBoard(kind, Trigger.at(0)));
    }

    UUID begin() {
        EveningReply reply = rack.startEvening("Anna", 10, key());
        assertThat(reply).isInstanceOf(EveningReply.Done.class);
        return ((EveningReply.Done) reply).check().id();
    }

    void hold(int... channels) {
        for (int channel : channels) {
            rack.hands().hold(channel, 60);
            rack.pass(MINUTE);
        }
    }

    /** All that a person does in a check. */
    EveningCheck check() {
        UUID id = begin();
        rack.deliver();
        hold(SWITCHED, BY_HAND, FRESH);
        rack.pass(9 * MINUTE);
        rack.deliver();
        rack.heardBy(id, "telephone", "Anna");
        EveningReply ended = rack.finishEvening(id);
        assertThat(ended).isInstanceOf(EveningReply.Done.class);
        return ((EveningReply.Done) ended).check();
    }

    static List<String> open(EveningCheck check) {
        return check.points().stream()
                .filter(point -> point.proof() != Proof.PASSED)
                .map(point -> point.proof() + " " + point.matter() + " " + point.about() + ": " + point.seen())
                .toList();
    }

    static Point point(EveningCheck check, Matter matter, String about) {
        return check.points().stream()
                .filter(point -> point.matter() == matter && point.about().equals(about))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + matter + " of " + about + " in " + check.points()));
    }

    /** Takes every message, unless it is away. */
    final class Telephone implements Outlet {
        @Override
        public String name() {
            return "telephone";
        }

        @Override
        public Delivery deliver(OutletMessage message) {
            if (outletAway) {
                return new NotTaken("the network is away");
            }
            delivered.add(message);
            return new Taken();
        }
    }
}
