package org.ebbwatch.acquire;

import java.io.ByteArrayOutputStream;
import java.util.zip.CRC32C;

/** A frame as the protocol's second version might send it: version 2, kind 1, sequence 257, four bytes of payload, none of them 0. */
final class VersionTwo {

    private VersionTwo() {}

    static byte[] frame() {
        byte[] body = {2, 1, 1, 1, 9, 9, 9, 9};
        CRC32C crc = new CRC32C();
        crc.update(body, 0, body.length);
        ByteArrayOutputStream encoded = new ByteArrayOutputStream();
        encoded.write(body.length + 4 + 1);
        encoded.writeBytes(body);
        for (int shift = 0; shift < 32; shift += 8) {
            int octet = (int) (crc.getValue() >>> shift) & 0xFF;
            if (octet == 0) {
                throw new IllegalStateException("this frame would need stuffing; choose another payload");
            }
            encoded.write(octet);
        }
        encoded.write(0);
        return encoded.toByteArray();
    }
}
