package org.ebbwatch.rough;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.ebbwatch.acquire.Port;
import org.ebbwatch.acquire.PortAddress;

/** Another program that has a serial port open. */
public final class PortHog implements AutoCloseable {
    private final Process process;

    PortHog(String path) throws IOException {
        process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        PortHog.class.getName(),
                        path)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        var said = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        if (!"open".equals(said.readLine())) {
            throw new IOException("the port could not be taken");
        }
    }

    /** Opens the port named and keeps it until it is killed. */
    public static void main(String[] arguments) throws Exception {
        Port port = new PortAddress.Serial(arguments[0], PortAddress.USUAL_BAUD).port();
        port.open();
        System.out.println("open");
        Thread.sleep(Long.MAX_VALUE);
    }

    /** Ends the other program. */
    void letGo() {
        process.destroyForcibly().onExit().join();
    }

    @Override
    public void close() {
        letGo();
    }
}
