package org.ebbwatch.profile.modbus;

import java.util.Optional;

/** How requests and answers travel: one request at a time. Pure. */
interface Wire {
    /** Begins a request; its bytes as they travel. What was left of the one before is forgotten. */
    byte[] begin(Request request);

    /** Takes bytes of the device; the answer to the request begun last, as soon as it is whole. */
    Optional<Answer> accept(byte[] bytes, int count);

    /** Whether bytes that came late or garbled must have died away before the next request. */
    boolean needsQuiet();
}
