package org.ebbwatch.evidence.container;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;
import java.util.zip.ZipException;

/** Unpacks one part; never gives more than the part is said to be long, and at its end checks that it was that. */
final class PartInput extends InputStream {
    private final PartHeader header;
    private final CRC32 crc = new CRC32();
    private final Inflater inflater = new Inflater(true);
    private final InflaterInputStream unpacked;
    private long given;

    PartInput(PartHeader header, InputStream packed) {
        this.header = header;
        this.unpacked = new InflaterInputStream(packed, inflater, 1 << 16);
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
        int read;
        try {
            read = unpacked.read(into, from, length);
        } catch (ZipException | EOFException e) {
            throw damaged("it cannot be unpacked");
        }
        if (read < 0) {
            check();
            return -1;
        }
        given += read;
        if (given > header.bytes()) {
            throw damaged("it is longer than it is said to be");
        }
        crc.update(into, from, read);
        return read;
    }

    private void check() throws DamageException {
        if (given != header.bytes()) {
            throw damaged("it is shorter than it is said to be");
        }
        if (inflater.getBytesRead() != header.packedBytes()) {
            throw damaged("something else lies behind it");
        }
        if ((int) crc.getValue() != header.crc()) {
            throw damaged("its bytes do not fit its CRC-32");
        }
    }

    private DamageException damaged(String why) {
        return new DamageException(header.name(), why);
    }

    @Override
    public void close() throws IOException {
        unpacked.close();
        inflater.end();
    }
}
