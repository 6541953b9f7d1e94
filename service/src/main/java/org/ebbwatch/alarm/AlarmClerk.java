package org.ebbwatch.alarm;

import java.util.Optional;
import org.ebbwatch.alarm.book.Alarm;
import org.ebbwatch.alarm.book.AlarmAnswer;
import org.ebbwatch.alarm.book.AlarmEvent;
import org.ebbwatch.passage.RackDesk;
import org.ebbwatch.passage.RackStorage;

/**
 * Takes what people ask about alarms: refuses what is stale or not allowed, and has the rest done once, with a receipt that is
 * committed with the step. Not thread-safe: all calls are made under the rack's one lock.
 */
public final class AlarmClerk implements AlarmRequests {
    private final AlarmDesk desk;
    private final RackStorage storage;
    private final AlarmReceipts receipts;

    public AlarmClerk(AlarmDesk desk, RackStorage storage) {
        this.desk = desk;
        this.storage = storage;
        this.receipts = new AlarmReceipts(storage.receipts());
    }

    @Override
    public AlarmReply ask(AlarmRequest request, String key) {
        if (key.length() < RackDesk.KEY_SHORTEST || key.length() > RackDesk.KEY_LONGEST) {
            throw new IllegalArgumentException("a key has 8 to 200 characters, not " + key.length());
        }
        return receipts.find(key, request, isOnDisk()).orElseGet(() -> answer(request, key));
    }

    /** What was done for that key before; empty where nothing was. */
    Optional<AlarmReceipt> done(String key) {
        return receipts.find(key);
    }

    private AlarmReply answer(AlarmRequest request, String key) {
        Optional<AlarmView> found = desk.find(request.alarm());
        if (found.isEmpty()) {
            return new AlarmReply.Unknown(request.alarm());
        }
        AlarmView now = found.get();
        if (request.seen() != now.sequence()) {
            return new AlarmReply.Stale(now, request.step(), request.seen());
        }
        AlarmAnswer answer = desk.ask(
                request,
                event -> receipts.keep(key, request, receipt(event), event.at().wallMillis()));
        if (answer instanceof AlarmAnswer.Done done) {
            return new AlarmReply.Done(receipt(done.event()), isOnDisk());
        }
        AlarmAnswer.Refused refused = (AlarmAnswer.Refused) answer;
        return new AlarmReply.Refused(now, request.step(), refused.why(), refused.words());
    }

    private boolean isOnDisk() {
        return storage.trouble().isEmpty();
    }

    private static AlarmReceipt receipt(AlarmEvent event) {
        Alarm alarm = event.alarm();
        return new AlarmReceipt(
                alarm.id(), alarm.steps(), alarm.kind(), event.step(), alarm.state(), alarm.cover(), event.who());
    }
}
