package org.ebbwatch.profile.modbus;

import com.digitalpetri.modbus.ExceptionCode;
import java.util.Locale;

/** What came of a request. */
sealed interface Answer {

    /**
     * The device did it.
     *
     * @param data the bytes read; none for a write
     */
    record Data(byte[] data) implements Answer {}

    /**
     * The device answered with an exception.
     *
     * @param code its code, 0 to 255
     */
    record Refused(int code) implements Answer {
        @Override
        public String toString() {
            String name = ExceptionCode.from(code)
                    .map(known -> known.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                    .orElse("a code that the standard does not name");
            return "refused with exception " + code + " (" + name + ")";
        }
    }

    /** Nothing came in time. */
    record Silent() implements Answer {
        @Override
        public String toString() {
            return "not answered in time";
        }
    }

    /**
     * Something came that is no answer to this request.
     *
     * @param why for a person
     */
    record Garbled(String why) implements Answer {
        @Override
        public String toString() {
            return "answered by what cannot be used: " + why;
        }
    }
}
