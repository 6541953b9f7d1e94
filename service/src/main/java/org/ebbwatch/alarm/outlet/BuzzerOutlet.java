package org.ebbwatch.alarm.outlet;

import java.util.HashSet;
import java.util.Set;
import java.util.function.IntPredicate;

/**
 * Sounds the boards' buzzers for a message that rings, and stops them when nobody is called any more. What could not be sounded
 * waits like every message, and comes with its end: a board that is back after an alarm was acknowledged stays quiet.
 */
public final class BuzzerOutlet implements Outlet {
    private static final int STOP = 0;
    private static final String UNACKNOWLEDGED = "UNACKNOWLEDGED";
    private static final String IN_VIEW = "NONE";

    private final String name;
    private final int seconds;
    private final IntPredicate buzzers;
    private final Set<String> calling = new HashSet<>();

    /**
     * Buzzers as a way out.
     *
     * @param name under which its messages are kept
     * @param seconds how long they sound for one message, 1 to 255
     * @param buzzers asks the boards to sound for so many seconds, 0 stops them; says whether any was asked
     */
    public BuzzerOutlet(String name, int seconds, IntPredicate buzzers) {
        this.name = name;
        this.seconds = seconds;
        this.buzzers = buzzers;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Delivery deliver(OutletMessage message) {
        String alarm = message.field(MessageField.ALARM_ID);
        if (message.rings()) {
            return sounded(seconds, () -> calling.add(alarm));
        }
        boolean calls = message.field(MessageField.STATE).endsWith(UNACKNOWLEDGED)
                && message.field(MessageField.COVER).equals(IN_VIEW);
        if (calls || !calling.contains(alarm)) {
            return new Taken();
        }
        if (calling.size() > 1) {
            calling.remove(alarm);
            return new Taken();
        }
        return sounded(STOP, () -> calling.remove(alarm));
    }

    private Delivery sounded(int howLong, Runnable then) {
        if (!buzzers.test(howLong)) {
            return new NotTaken("no board with a buzzer is connected");
        }
        then.run();
        return new Taken();
    }
}
