package org.ebbwatch.acquire;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.LeadOutcome;
import org.ebbwatch.time.Gap;

/** Keeps all it hears; may be read from another thread. */
class RecordingListener implements BoardListener {

    final List<Happening> heard = new CopyOnWriteArrayList<>();
    final List<String> details = new CopyOnWriteArrayList<>();

    /** What was heard since the last call. */
    List<Happening> news() {
        List<Happening> all = new ArrayList<>(heard);
        heard.clear();
        return all;
    }

    String lastDetail() {
        return details.get(details.size() - 1);
    }

    @Override
    public void identified(String board, Identity identity) {
        heard.add(new Happening.Identified(identity.serialNumber()));
    }

    @Override
    public void scan(String board, BoardScan scan) {
        heard.add(new Happening.Scan(scan.bootNumber(), scan.scan(), scan.eventMillis(), scan.volts()[0]));
    }

    @Override
    public void silent(String board, long eventMillis) {
        heard.add(new Happening.Silent(eventMillis));
    }

    @Override
    public void gap(String board, Gap gap) {
        heard.add(new Happening.GapBefore(gap));
    }

    @Override
    public void rebooted(String board, long bootNumber) {
        heard.add(new Happening.Rebooted(bootNumber));
    }

    @Override
    public void clockOdd(String board, double ratio, boolean odd) {
        heard.add(new Happening.ClockOdd(odd));
    }

    @Override
    public void leadChecked(String board, int channel, LeadOutcome outcome, int before, int during) {
        heard.add(new Happening.Lead(channel, outcome, before, during));
    }

    @Override
    public void answered(String board, int requestSequence, Answer answer) {
        heard.add(new Happening.Answered(requestSequence, answer));
    }

    @Override
    public void link(String board, LinkState state, String detail) {
        details.add(detail);
        heard.add(new Happening.Link(state));
    }
}
