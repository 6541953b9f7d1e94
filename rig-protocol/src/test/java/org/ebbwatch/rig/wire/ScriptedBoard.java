package org.ebbwatch.rig.wire;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.ebbwatch.rig.message.Message;

/** The C board of the protocol document, its hardware and its time moved by the test: {@code src/test/c/board_script.c}. */
final class ScriptedBoard implements AutoCloseable {
    private final Process process;
    private final PrintStream in;
    private final BufferedReader out;
    private final int bytesOfMemory;
    private String loads = "0 0 0";

    ScriptedBoard(Path program) throws IOException {
        process = new ProcessBuilder(program.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        in = new PrintStream(process.getOutputStream(), false, US_ASCII);
        out = new BufferedReader(new InputStreamReader(process.getInputStream(), US_ASCII));
        bytesOfMemory = Integer.parseInt(out.readLine());
    }

    /** Of one board, of this many channels at most as it is compiled. */
    int bytesOfMemory() {
        return bytesOfMemory;
    }

    /** Does one line of the script; gives what the board sent meanwhile. */
    byte[] then(String line) {
        try {
            in.println(line);
            in.flush();
            byte[] sent = {};
            for (String said = out.readLine(); !".".equals(said); said = out.readLine()) {
                if (said == null || said.startsWith("what?") || said.equals("started 0")) {
                    throw new IllegalStateException(line + ": " + said);
                }
                if (said.startsWith("sent ")) {
                    sent = HexFormat.of().parseHex(said.substring(5));
                } else if (said.startsWith("loads ")) {
                    loads = said.substring(6);
                }
            }
            return sent;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    byte[] hears(byte[] bytes) {
        return then("hear " + HexFormat.of().formatHex(bytes));
    }

    List<Message> answers(Message request, int sequence) {
        return messages(hears(FrameEncoder.encode(request, sequence)));
    }

    List<Message> passes(int millis) {
        return messages(then("pass " + millis));
    }

    /** For every channel, whether its load is applied. */
    String loads() {
        return loads;
    }

    static List<Message> messages(byte[] bytes) {
        List<Message> messages = new ArrayList<>();
        FrameDecoder decoder = new FrameDecoder(new FrameSink() {
            @Override
            public void readings(ReadingsView view) {
                messages.add(view.toReadings());
            }

            @Override
            public void message(int sequence, Message message) {
                messages.add(message);
            }
        });
        decoder.accept(bytes, 0, bytes.length);
        if (decoder.framesBad() > 0) {
            throw new AssertionError(
                    "the board sent a frame that is none: " + HexFormat.of().formatHex(bytes));
        }
        return messages;
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
