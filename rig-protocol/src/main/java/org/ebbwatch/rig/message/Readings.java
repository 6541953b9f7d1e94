package org.ebbwatch.rig.message;

import java.util.List;

/**
 * One scan of a board's channels, or a part of one: parts of a scan share boot number, millis and scan number.
 *
 * @param bootNumber u32, as in {@link Identity}
 * @param boardMillis the board's clock when the scan began, u32; wraps to 0 after 2^32 - 1
 * @param scan u32, 1 for the first scan after power-on, one more each scan
 * @param contacts bit n is 1 where contact input n is closed, 0 to 255
 * @param amperes every channel carries amperes
 * @param firstChannel channel of the first reading, 0-based
 * @param readings 1 to 64, up to channel 63 at most; copied
 */
public record Readings(
        long bootNumber,
        long boardMillis,
        long scan,
        int contacts,
        boolean amperes,
        int firstChannel,
        List<Reading> readings)
        implements BoardMessage {
    public Readings {
        Bounds.u32("bootNumber", bootNumber);
        Bounds.u32("boardMillis", boardMillis);
        Bounds.within("scan", scan, 1, Bounds.U32_HIGHEST);
        Bounds.u8("contacts", contacts);
        readings = List.copyOf(readings);
        Bounds.within("number of readings", readings.size(), 1, Bounds.CHANNELS_MOST);
        Bounds.within("firstChannel", firstChannel, 0, Bounds.CHANNELS_MOST - readings.size());
        if (!amperes && readings.stream().anyMatch(reading -> reading.amperes() != 0)) {
            throw new IllegalArgumentException("a reading has amperes, but the scan carries none");
        }
    }

    @Override
    public Kind kind() {
        return Kind.READINGS;
    }
}
