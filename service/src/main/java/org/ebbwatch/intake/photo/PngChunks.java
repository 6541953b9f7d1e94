package org.ebbwatch.intake.photo;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Set;
import java.util.zip.CRC32;

/**
 * A PNG (ISO/IEC 15948), chunk by chunk, each with its checksum proven. Kept is what makes the picture and its colours; texts, times,
 * Exif, profiles, animations and whatever nobody knows are left out.
 */
final class PngChunks {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final Set<String> KEPT =
            Set.of("IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "sBIT");
    private static final int AROUND = 12;

    private final byte[] in;
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private int at = SIGNATURE.length;
    private boolean begun;
    private boolean pictured;

    PngChunks(byte[] in) {
        this.in = in;
    }

    static boolean isOne(byte[] content) {
        return content.length >= SIGNATURE.length
                && Arrays.equals(content, 0, SIGNATURE.length, SIGNATURE, 0, SIGNATURE.length);
    }

    byte[] stripped() throws UnfitPhotoException {
        out.writeBytes(SIGNATURE);
        String name;
        do {
            name = chunk();
        } while (!name.equals("IEND"));
        if (!pictured) {
            throw damaged("has no picture in it");
        }
        return out.toByteArray();
    }

    /** Reads a chunk and gives its name. */
    private String chunk() throws UnfitPhotoException {
        if (in.length - at < AROUND) {
            throw damaged("ends too early");
        }
        long length = number(at);
        if (length > in.length - at - AROUND) {
            throw damaged("ends too early");
        }
        int whole = (int) length + AROUND;
        var crc = new CRC32();
        crc.update(in, at + 4, (int) length + 4);
        if (crc.getValue() != number(at + 8 + (int) length)) {
            throw damaged("is damaged");
        }
        String name = new String(in, at + 4, 4, StandardCharsets.US_ASCII);
        take(name, (int) length);
        if (KEPT.contains(name)) {
            out.write(in, at, whole);
        }
        at += whole;
        return name;
    }

    private void take(String name, int length) throws UnfitPhotoException {
        if (begun == name.equals("IHDR")) {
            throw damaged("is damaged");
        }
        if (name.equals("IHDR")) {
            if (length != 13) {
                throw damaged("is damaged");
            }
            StrippedPhoto.requireSize(number(at + 8), number(at + 12));
            begun = true;
        }
        pictured |= name.equals("IDAT");
        boolean critical = Character.isUpperCase(name.charAt(0));
        if (critical && !KEPT.contains(name)) {
            throw damaged("is of a kind that is not taken");
        }
    }

    private long number(int from) {
        return ByteBuffer.wrap(in).getInt(from) & 0xFFFFFFFFL;
    }

    private static UnfitPhotoException damaged(String what) {
        return new UnfitPhotoException("The PNG " + what + ". Take the photo anew, or save it as an ordinary PNG.");
    }
}
