package org.ebbwatch.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ebbwatch.rig.message.Who;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(30)
class SimRigTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @TempDir
    Path folder;

    private Path scenario;

    @BeforeEach
    void writeScenario() throws IOException {
        scenario = folder.resolve("two.yaml");
        Files.writeString(scenario, "boards: [{serialNumber: SIM-A}, {serialNumber: SIM-B}]\n");
    }

    private int run(String... arguments) {
        return SimRig.run(
                arguments,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
    }

    private String said() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String complained() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void a_good_scenario_is_called_good() {
        assertThat(run(scenario.toString(), "--check")).isZero();
        assertThat(said()).isEqualTo(scenario + ": good, 2 board(s)" + System.lineSeparator());
    }

    @Test
    void help_is_given() {
        assertThat(run("--help")).isZero();
        assertThat(said()).startsWith("Usage: java -jar sim-rig.jar SCENARIO");
    }

    @Test
    void what_cannot_be_followed_is_refused_with_what_is_allowed() {
        assertThat(run()).isEqualTo(SimRig.REFUSED);
        assertThat(run("--sped", "3")).isEqualTo(SimRig.REFUSED);
        assertThat(run("a", "b")).isEqualTo(SimRig.REFUSED);
        assertThat(run("a", "--port", "com3")).isEqualTo(SimRig.REFUSED);
        assertThat(run("a", "--speed", "0")).isEqualTo(SimRig.REFUSED);
        assertThat(run("a", "--speed")).isEqualTo(SimRig.REFUSED);
        assertThat(run("nowhere.yaml")).isEqualTo(SimRig.REFUSED);
        assertThat(run(scenario.toString(), "--port", "tcp:65535")).isEqualTo(SimRig.REFUSED);
        assertThat(complained())
                .contains(
                        "which scenario?",
                        "unknown option --sped",
                        "one scenario at a time: a or b",
                        "--port is 'com3', allowed is pty or tcp:PORT",
                        "--speed is '0', allowed is 1 to 65535",
                        "--speed needs a value",
                        "cannot read the scenario nowhere.yaml",
                        "the last board would listen on 65536");
    }

    @Test
    void a_bad_scenario_is_refused_with_its_line() throws IOException {
        Files.writeString(scenario, "boards:\n  - serialNumbr: A\n");

        assertThat(run(scenario.toString())).isEqualTo(SimRig.REFUSED);
        assertThat(complained()).startsWith(scenario + ":2: unknown key 'serialNumbr' in a board; did you mean");
    }

    @Test
    void every_board_of_a_scenario_answers_where_it_says() throws Exception {
        Thread running = new Thread(() -> run(scenario.toString(), "--port", "tcp:0", "--speed", "60"));
        running.start();
        Matcher places = Pattern.compile("board (SIM-[AB]) at tcp:127\\.0\\.0\\.1:(\\d+), speed 60")
                .matcher("");
        while (running.isAlive() && said().lines().count() < 2) {
            Thread.onSpinWait();
        }
        places.reset(said());
        int answered = 0;
        while (places.find()) {
            TestHost host = new TestHost();
            try (Socket line = new Socket(InetAddress.getLoopbackAddress(), Integer.parseInt(places.group(2)))) {
                line.getOutputStream().write(host.frame(new Who()));
                byte[] buffer = new byte[4096];
                while (host.identity() == null) {
                    host.hear(buffer, line.getInputStream().read(buffer));
                }
            }
            assertThat(host.identity().serialNumber()).isEqualTo(places.group(1));
            assertThat(host.identity().speed()).isEqualTo(60);
            answered++;
        }
        running.interrupt();
        running.join();
        assertThat(answered).isEqualTo(2);
    }
}
