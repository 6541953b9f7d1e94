package org.ebbwatch.handwork;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.OutletMessage;

/** An outlet that takes everything. */
final class Mailbox implements Outlet {
    final List<OutletMessage> messages = new ArrayList<>();

    @Override
    public String name() {
        return "mailbox";
    }

    @Override
    public Delivery deliver(OutletMessage message) {
        messages.add(message);
        return new Taken();
    }
}
