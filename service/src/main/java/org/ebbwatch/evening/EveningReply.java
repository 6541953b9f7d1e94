package org.ebbwatch.evening;

import java.util.List;
import java.util.UUID;

/** How a request about evening checks ended. */
public sealed interface EveningReply {

    /** Done. */
    record Done(EveningCheck check) implements EveningReply {}

    /** Another one runs. */
    record Busy(EveningCheck running) implements EveningReply {}

    /** There is no such check. */
    record Unknown(UUID check) implements EveningReply {}

    /** It is over; nothing can be added to it. */
    record Over(EveningCheck check) implements EveningReply {}

    /** There is no such outlet. */
    record UnknownOutlet(String outlet, List<String> outlets) implements EveningReply {}
}
