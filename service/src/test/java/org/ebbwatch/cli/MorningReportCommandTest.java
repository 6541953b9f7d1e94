package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.annotation.Property;
import io.micronaut.runtime.server.EmbeddedServer;
import io.micronaut.test.extensions.junit5.annotation.MicronautTest;
import jakarta.inject.Inject;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

@MicronautTest(transactional = false)
@Property(name = "invented.rack", value = "yes")
class MorningReportCommandTest {
    @Inject
    private EmbeddedServer server;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... arguments) {
        CommandLine commandLine = Ebbwatch.commandLine();
        commandLine.setOut(new PrintWriter(out));
        commandLine.setErr(new PrintWriter(err));
        return commandLine.execute(arguments);
    }

    @Test
    void it_shows_the_text_of_the_service_that_runs() {
        assertThat(run("morning-report", "--url", server.getURI().toString())).isZero();
        assertThat(out.toString()).startsWith("Morning report, ").contains("\nTo do until tomorrow\n");
    }

    @Test
    void a_time_that_the_service_refuses_is_told() {
        assertThat(run("morning-report", "--url", server.getURI().toString(), "--since", "yester day"))
                .isEqualTo(3);
        assertThat(err.toString()).contains("since cannot be \"yester day\"");
    }

    @Test
    void where_no_service_runs_it_says_what_to_do() {
        assertThat(run("morning-report", "--url", "http://127.0.0.1:9")).isEqualTo(3);
        assertThat(err.toString()).contains("no service answers at http://127.0.0.1:9", "--url");
    }
}
