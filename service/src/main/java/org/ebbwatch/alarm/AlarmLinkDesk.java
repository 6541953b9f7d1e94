package org.ebbwatch.alarm;

/** Where whoever follows a link of a message is served. Safe for use by several threads. */
public interface AlarmLinkDesk {

    /** How it stands with a link; changes nothing. */
    LinkAnswer look(String token);

    /** Acknowledges what the link is for, once. */
    LinkAnswer acknowledge(String token);

    /** How it stands with a link. */
    sealed interface LinkAnswer {

        /** It can be used now. */
        record Open(AlarmView alarm) implements LinkAnswer {}

        /**
         * It was used just now.
         *
         * @param onDisk whether that would outlive a power cut by now
         */
        record Done(AlarmReceipt receipt, boolean onDisk) implements LinkAnswer {}

        /** It was used before; that is all it was for. */
        record Used(AlarmReceipt receipt) implements LinkAnswer {}

        /** Its time is over. */
        record Expired() implements LinkAnswer {}

        /** The alarm has made steps since the message. */
        record Changed(AlarmView now) implements LinkAnswer {}

        /** The alarm is over. */
        record Over() implements LinkAnswer {}

        /** This service never made it. */
        record Bad() implements LinkAnswer {}
    }
}
