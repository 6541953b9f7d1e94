package org.ebbwatch.profile.text;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import org.ebbwatch.profile.BoardProfile;
import org.ebbwatch.profile.FuzzCount;
import org.ebbwatch.profile.ProfiledBoard;
import org.ebbwatch.profile.file.ProfileFile;
import org.ebbwatch.rack.RackFileFaulty;
import org.ebbwatch.rig.message.Message;
import org.ebbwatch.rig.message.Reading;
import org.ebbwatch.rig.wire.FrameDecoder;
import org.ebbwatch.rig.wire.FrameSink;
import org.ebbwatch.rig.wire.ReadingsView;

/**
 * Lines of text between boot chatter, noise and damaged lines, on their whole way to the frames of a board. What comes out as valid
 * must stand in one of the last lines sent.
 */
public final class TextFuzz {
    private static final String PROFILE =
            """
            protocol: text
            intervalMillis: 1000
            columns: [ms, u1, u2, t1]
            clock: ms
            converter: {lowestVolts: 0, highestVolts: 10, offsetMillivolts: 1, gainPercent: 0.1}
            channels:
              - role: cell
                volts: {column: u1, decimals: 4}
                celsius: {column: t1, decimals: 2, sensor: {type: degrees, uncertainty: 1}}
              - role: cell
                volts: {column: u2, decimals: 4}
            """;
    private static final int REMEMBERED = 8;
    private static final String NO_DIGITS = "!\"#$%&'()*/:;<=>?@ABCDFGHIJ[]_abcdfghxyz{|}~,.";
    private static final String CHATTER =
            "ets Jan  8 2013,rst cause:2, boot mode:(3,6)\r\nload 0x4010f000, len 3460, room 16\r\n";

    /** A line's numbers in a board's counts. */
    private record Sent(int one, int other, int celsius) {}

    private final SplittableRandom dice;
    private final FuzzCount count = new FuzzCount();
    private final TextScans scans;
    private final ProfiledBoard board;
    private final FrameDecoder decoder = new FrameDecoder(new Incoming());
    private final Sent[] last = new Sent[REMEMBERED];
    private final byte[] frames = new byte[4_096];
    private long millis;
    private long nanos;
    private int lines;
    private boolean outside;
    private boolean passed;
    private String fed = "";

    public TextFuzz(long seed) throws RackFileFaulty {
        dice = new SplittableRandom(seed);
        BoardProfile profile = ProfileFile.parse(PROFILE, "fuzz");
        scans = new TextScans((TextProfile) profile);
        board = new ProfiledBoard(((TextProfile) profile).description(), "FUZZ");
        feed("\n");
    }

    /** Feeds at least so many bytes. */
    public FuzzCount run(long bytes) {
        while (count.bytes() < bytes) {
            int kind = dice.nextInt(16);
            if (kind < 8) {
                feed("\n");
                count.sent();
                feed(line() + "\r\n");
            } else if (kind < 14) {
                count.damaged();
                feed(damaged(kind));
            } else {
                feedOutside(
                        kind == 14
                                ? "a digit turned into another or a blank"
                                : "the head of a line on the tail of the next",
                        kind);
            }
        }
        return count;
    }

    private String damaged(int kind) {
        String line = line();
        int at = dice.nextInt(line.length());
        return switch (kind) {
            case 8 -> "\n" + line.substring(0, at) + "\n";
            case 9 -> "\n" + line.substring(0, at);
            case 10 -> "\n" + line.substring(0, at) + noDigit() + line.substring(at) + "\n";
            case 11 -> "\n" + line.substring(0, at) + noDigit() + line.substring(at + 1) + "\n";
            case 12 -> "\n" + line.substring(0, at) + CHATTER;
            default -> "\n" + noise() + "\n";
        };
    }

    /** Text has no checksum: what is done here may pass, and is counted apart. */
    private void feedOutside(String how, int kind) {
        String line = line();
        String damaged;
        if (kind == 14) {
            damaged = turned(line, line.indexOf(',') + 1 + 2 * dice.nextInt(2));
        } else {
            String next = line();
            damaged = line.substring(0, 1 + dice.nextInt(line.length() - 1))
                    + next.substring(dice.nextInt(next.length()));
        }
        feed("\n");
        outside = true;
        passed = false;
        feed(damaged + "\n");
        outside = false;
        count.unnoticeable(how, passed);
    }

    /** With one digit turned into another, or into a blank. */
    private String turned(String line, int at) {
        String others = "0123456789 ".replace(line.substring(at, at + 1), "");
        return line.substring(0, at) + others.charAt(dice.nextInt(others.length())) + line.substring(at + 1);
    }

    private String line() {
        millis = (millis + 1_000) & 0xFFFF_FFFFL;
        int one = dice.nextInt(50_000);
        int other = dice.nextInt(50_000);
        int celsius = dice.nextInt(9_000);
        last[lines++ % REMEMBERED] = new Sent(100 * one, 100 * other, 10 * celsius);
        return millis + "," + decimal(one, 10_000) + "," + decimal(other, 10_000) + "," + decimal(celsius, 100);
    }

    private static String decimal(int number, int per) {
        String decimals = Integer.toString(per + number % per).substring(1);
        return number / per + "." + decimals;
    }

    private char noDigit() {
        return NO_DIGITS.charAt(dice.nextInt(NO_DIGITS.length()));
    }

    private String noise() {
        byte[] noise = new byte[dice.nextInt(dice.nextInt(40) == 0 ? 3_000 : 60)];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (byte) dice.nextInt(256);
        }
        return new String(noise, ISO_8859_1).toLowerCase(Locale.ROOT);
    }

    private void feed(String text) {
        fed = text;
        byte[] bytes = text.getBytes(ISO_8859_1);
        int from = 0;
        while (from < bytes.length) {
            int length = Math.min(bytes.length - from, 1 + dice.nextInt(64));
            byte[] chunk = Arrays.copyOfRange(bytes, from, from + length);
            nanos += 20_000_000;
            scans.accept(chunk, length, nanos, board);
            from += length;
        }
        count.fed(bytes.length);
        while (board.hasOutput()) {
            decoder.accept(frames, 0, board.take(frames));
        }
    }

    private boolean wasSent(ReadingsView view) {
        for (Sent sent : last) {
            if (sent != null
                    && fits(view.state(0), Reading.VOLTS_VALID, view.volts(0), sent.one)
                    && fits(view.state(0), Reading.CELSIUS_VALID, view.celsius(0), sent.celsius)
                    && fits(view.state(1), Reading.VOLTS_VALID, view.volts(1), sent.other)) {
                return true;
            }
        }
        return false;
    }

    private static boolean fits(int state, int valid, int counts, int sent) {
        return (state & valid) == 0 ? counts == 0 : counts == sent;
    }

    private final class Incoming implements FrameSink {
        @Override
        public void readings(ReadingsView view) {
            if (wasSent(view)) {
                count.right();
            } else if (outside) {
                passed = true;
            } else {
                count.wrong(fed + " read as " + view.volts(0) + ", " + view.celsius(0) + ", " + view.volts(1));
            }
        }

        @Override
        public void message(int sequence, Message message) {
            // identities, told at restarts of the clock
        }
    }
}
