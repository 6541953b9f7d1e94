package org.ebbwatch.alarm;

import java.util.Optional;
import java.util.function.Function;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.acquire.RackLock;
import org.ebbwatch.alarm.book.AlarmStep;
import org.ebbwatch.trace.codec.Sha256;

/**
 * Serves whoever follows a link of a message. That a link was used is the receipt of what it did: written down with the step, and
 * kept for longer than any link lasts.
 */
public final class AlarmLinkClerk implements AlarmLinkDesk {
    private final AlarmDesk desk;
    private final AlarmClerk clerk;
    private final AcknowledgeLinks links;
    private final HostClock clock;
    private final RackLock lock;

    public AlarmLinkClerk(AlarmDesk desk, AlarmClerk clerk, AcknowledgeLinks links, HostClock clock, RackLock lock) {
        this.desk = desk;
        this.clerk = clerk;
        this.links = links;
        this.clock = clock;
        this.lock = lock;
    }

    @Override
    public LinkAnswer look(String token) {
        return with(token, found -> look(found, key(token)));
    }

    @Override
    public LinkAnswer acknowledge(String token) {
        return with(token, found -> {
            LinkAnswer look = look(found, key(token));
            return look instanceof LinkAnswer.Open ? acknowledge(found, key(token)) : look;
        });
    }

    private LinkAnswer with(String text, Function<AcknowledgeToken, LinkAnswer> work) {
        return links.read(text).map(token -> lock.call(() -> work.apply(token))).orElseGet(LinkAnswer.Bad::new);
    }

    private LinkAnswer look(AcknowledgeToken token, String key) {
        Optional<AlarmReceipt> used = clerk.done(key);
        if (used.isPresent()) {
            return new LinkAnswer.Used(used.get());
        }
        Optional<AlarmView> alarm = desk.find(token.alarm());
        if (alarm.isEmpty()) {
            return new LinkAnswer.Over();
        }
        if (clock.now().wallMillis() >= token.untilWallMillis()) {
            return new LinkAnswer.Expired();
        }
        return alarm.get().sequence() == token.sequence()
                ? new LinkAnswer.Open(alarm.get())
                : new LinkAnswer.Changed(alarm.get());
    }

    private LinkAnswer acknowledge(AcknowledgeToken token, String key) {
        var request = new AlarmRequest(
                token.alarm(), token.sequence(), AlarmStep.ACKNOWLEDGED, "link of " + token.outlet(), "", 0);
        AlarmReply reply = clerk.ask(request, key);
        if (reply instanceof AlarmReply.Done done) {
            return new LinkAnswer.Done(done.receipt(), done.onDisk());
        }
        throw new IllegalStateException("a link that was open a moment ago was refused: " + reply);
    }

    private static String key(String token) {
        return "link " + Sha256.of(token);
    }
}
