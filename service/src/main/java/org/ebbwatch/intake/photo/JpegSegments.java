package org.ebbwatch.intake.photo;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;

/**
 * A JPEG (ITU-T T.81), segment by segment. Kept are tables, frame header and scans; of the application segments only what decides on
 * colours: that it is JFIF, and Adobe's colour transform. Of Exif only the orientation is written anew. Baseline, extended and
 * progressive pictures are taken, which is what cameras make.
 */
final class JpegSegments {
    private static final int START = 0xD8;
    private static final int END = 0xD9;
    private static final int SCAN = 0xDA;
    private static final int APP0 = 0xE0;
    private static final int APP1 = 0xE1;
    private static final int APP14 = 0xEE;
    private static final Set<Integer> FRAMES = Set.of(0xC0, 0xC1, 0xC2);
    /** Quantisation and Huffman tables, restart interval. */
    private static final Set<Integer> TABLES = Set.of(0xDB, 0xC4, 0xDD);

    private static final int ADOBE_LENGTH = 14;
    private static final byte[] JFIF = {
        (byte) 0xFF, (byte) 0xE0, 0, 16, 'J', 'F', 'I', 'F', 0, 1, 2, 0, 0, 1, 0, 1, 0, 0
    };

    private final byte[] in;
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private int at = 2;
    private boolean framed;
    private boolean scanned;

    JpegSegments(byte[] in) {
        this.in = in;
    }

    static boolean isOne(byte[] content) {
        return content.length > 3
                && (content[0] & 0xFF) == 0xFF
                && (content[1] & 0xFF) == START
                && (content[2] & 0xFF) == 0xFF;
    }

    byte[] stripped() throws UnfitPhotoException {
        out.writeBytes(new byte[] {(byte) 0xFF, (byte) START});
        int marker = marker();
        while (marker != END) {
            segment(marker);
            marker = marker();
        }
        if (!scanned) {
            throw damaged("has no picture in it");
        }
        out.writeBytes(new byte[] {(byte) 0xFF, (byte) END});
        return out.toByteArray();
    }

    private void segment(int marker) throws UnfitPhotoException {
        int begin = at - 2;
        int length = word(at);
        int end = at + length;
        if (length < 2 || end > in.length) {
            throw damaged("ends too early");
        }
        at = end;
        if (FRAMES.contains(marker)) {
            frame(begin, end);
        } else if (marker == SCAN) {
            scan(begin);
        } else if (TABLES.contains(marker)) {
            out.write(in, begin, end - begin);
        } else if (marker == APP0 && holds(begin + 4, end, "JFIF\0")) {
            out.writeBytes(JFIF);
        } else if (marker == APP14 && length == ADOBE_LENGTH && holds(begin + 4, end, "Adobe")) {
            out.write(in, begin, end - begin);
        } else if (marker == APP1 && holds(begin + 4, end, "Exif\0\0")) {
            orientation(begin + 10, end).ifPresent(this::writeOrientation);
        } else if (!isDropped(marker)) {
            throw damaged("is of a kind that is not taken");
        }
    }

    /** The other application segments, and comments. */
    private static boolean isDropped(int marker) {
        return (marker >= APP0 && marker <= 0xEF) || marker == 0xFE;
    }

    private void frame(int begin, int end) throws UnfitPhotoException {
        if (framed || end - begin < 11) {
            throw damaged("has a frame too many, or one that is cut off");
        }
        StrippedPhoto.requireSize(word(begin + 7), word(begin + 5));
        framed = true;
        out.write(in, begin, end - begin);
    }

    /** A scan's header and its data, which go on to the next marker that is no restart. */
    private void scan(int begin) throws UnfitPhotoException {
        if (!framed) {
            throw damaged("has a picture without a frame");
        }
        while (!(octet(at) == 0xFF && isMarker(octet(at + 1)))) {
            at++;
        }
        out.write(in, begin, at - begin);
        scanned = true;
    }

    private static boolean isMarker(int octet) {
        return octet != 0 && octet != 0xFF && !(octet >= 0xD0 && octet <= 0xD7);
    }

    /** Reads a marker; any number of filling 0xFF may stand before it. */
    private int marker() throws UnfitPhotoException {
        if (octet(at) != 0xFF) {
            throw damaged("is damaged");
        }
        while (octet(at) == 0xFF) {
            at++;
        }
        return octet(at++);
    }

    /** The orientation of an Exif block (a TIFF header with its first directory); empty where there is none or it is damaged. */
    private Optional<Integer> orientation(int tiff, int end) {
        if (end - tiff < 8) {
            return Optional.empty();
        }
        boolean little = in[tiff] == 'I';
        long directory = tiff + number(tiff + 4, 4, little);
        if (directory + 2 > end) {
            return Optional.empty();
        }
        long entries = number((int) directory, 2, little);
        for (long entry = 0; entry < entries && directory + 14 + 12 * entry <= end; entry++) {
            int where = (int) (directory + 2 + 12 * entry);
            if (number(where, 2, little) == 0x0112) {
                return Optional.of((int) number(where + 8, 2, little)).filter(value -> value >= 1 && value <= 8);
            }
        }
        return Optional.empty();
    }

    private void writeOrientation(int orientation) {
        byte[] exif = {
            (byte) 0xFF,
            (byte) APP1,
            0,
            34,
            'E',
            'x',
            'i',
            'f',
            0,
            0, // length 34
            'M',
            'M',
            0,
            42,
            0,
            0,
            0,
            8, // big-endian, first directory at 8
            0,
            1,
            1,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            (byte) orientation,
            0,
            0, // one entry: orientation, a short
            0,
            0,
            0,
            0 // no further directory
        };
        out.writeBytes(exif);
    }

    private long number(int from, int octets, boolean little) {
        long number = 0;
        for (int i = 0; i < octets; i++) {
            number = (number << 8) | (in[little ? from + octets - 1 - i : from + i] & 0xFF);
        }
        return number;
    }

    private boolean holds(int from, int end, String text) {
        byte[] wanted = text.getBytes(StandardCharsets.US_ASCII);
        return from + wanted.length <= end && Arrays.equals(in, from, from + wanted.length, wanted, 0, wanted.length);
    }

    private int word(int from) throws UnfitPhotoException {
        return (octet(from) << 8) | octet(from + 1);
    }

    private int octet(int from) throws UnfitPhotoException {
        if (from >= in.length) {
            throw damaged("ends too early");
        }
        return in[from] & 0xFF;
    }

    private static UnfitPhotoException damaged(String what) {
        return new UnfitPhotoException("The JPEG " + what + ". Take the photo anew, or save it as an ordinary JPEG.");
    }
}
