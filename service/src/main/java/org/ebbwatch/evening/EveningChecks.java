package org.ebbwatch.evening;

import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Where people ask for evening checks and see what came of them. Safe for use by several threads. */
public interface EveningChecks {
    /** At most so many minutes are given to holding sensors. */
    int MOST_TOUCH_MINUTES = 30;

    /** So many checks are told at once. */
    int TOLD = 10;

    /**
     * Starts a check; the same key gives the same check again.
     *
     * @param by who asks
     * @param touchMinutes how long sensors may be held, 0 to {@value #MOST_TOUCH_MINUTES}; 0: nobody will
     * @param key made by whoever asks, 8 to 200 characters
     */
    EveningReply startEvening(String by, int touchMinutes, String key);

    /** Somebody had the test alarm by an outlet; it is acknowledged in that name. */
    EveningReply heardBy(UUID check, String outlet, String by);

    /** Ends a check; what is not proven by then stays so. One that is over stays as it is. */
    EveningReply finishEvening(UUID check);

    /** One check. */
    Optional<EveningCheck> evening(UUID check);

    /** The last ones, newest first. */
    List<EveningCheck> evenings();
}
