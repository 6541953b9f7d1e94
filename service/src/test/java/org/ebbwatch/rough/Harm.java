package org.ebbwatch.rough;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;

/** What a line does to the frames that pass. One object for one line: some remember the frame before. */
@FunctionalInterface
interface Harm {
    /** A line that delivers. */
    Harm NONE = List::of;

    /**
     * What comes out for a frame that goes in, its delimiter included.
     *
     * @return pieces of bytes in the order they come out; none: it is lost or comes later
     */
    List<byte[]> of(byte[] frame);

    /** Each byte is another one with this chance, delimiters too. */
    static Harm byteErrors(double share, Random random) {
        return frame -> {
            byte[] harmed = frame.clone();
            for (int i = 0; i < harmed.length; i++) {
                if (random.nextDouble() < share) {
                    harmed[i] ^= (byte) (1 + random.nextInt(255));
                }
            }
            return List.of(harmed);
        };
    }

    /** A burst begins in a frame with this chance and makes noise of so many bytes, over the ends of frames. */
    static Harm bursts(double share, int bytes, Random random) {
        int[] left = {0};
        return frame -> {
            byte[] harmed = frame.clone();
            int from = left[0] > 0 ? 0 : harmed.length;
            if (left[0] == 0 && random.nextDouble() < share) {
                left[0] = bytes;
                from = random.nextInt(harmed.length);
            }
            for (int i = from; i < harmed.length && left[0] > 0; i++, left[0]--) {
                harmed[i] = (byte) random.nextInt(256);
            }
            return List.of(harmed);
        };
    }

    /** A frame ends early with this chance; its delimiter is lost too in half of these cases. */
    static Harm truncated(double share, Random random) {
        return frame -> {
            if (random.nextDouble() >= share) {
                return List.of(frame);
            }
            byte[] cut = Arrays.copyOf(frame, random.nextInt(frame.length));
            return random.nextBoolean() ? List.of(cut) : List.of(cut, new byte[1]);
        };
    }

    /** A frame comes twice, or up to four times, with this chance. */
    static Harm duplicated(double share, Random random) {
        return frame -> {
            List<byte[]> out = new ArrayList<>(List.of(frame));
            for (int more = random.nextDouble() < share ? 1 + random.nextInt(3) : 0; more > 0; more--) {
                out.add(frame);
            }
            return out;
        };
    }

    /** A frame waits with this chance until one or more later ones have passed. */
    static Harm reordered(double share, Random random) {
        List<byte[]> held = new ArrayList<>();
        return frame -> {
            if (random.nextDouble() < share) {
                held.add(frame);
                return List.of();
            }
            List<byte[]> out = new ArrayList<>(List.of(frame));
            if (random.nextBoolean()) {
                out.addAll(held);
                held.clear();
            }
            return out;
        };
    }

    /** This harm, then another. */
    default Harm then(Harm next) {
        return frame -> of(frame).stream()
                .flatMap(piece -> piece.length == 0 ? Stream.<byte[]>empty() : next.of(piece).stream())
                .toList();
    }
}
