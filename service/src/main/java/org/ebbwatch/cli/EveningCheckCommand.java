package org.ebbwatch.cli;

import io.micronaut.json.tree.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Checks with a running service whether what can be proven is proven before the rack is left for the night. */
@Command(
        name = "evening-check",
        mixinStandardHelpOptions = true,
        description = {
            "Proves with a running service what can be proven before a rack is left for the night. See docs/evening-check.md.",
            "The operator's token is taken from the environment variable EBBWATCH_TOKEN.",
            "Exit code 0: all was proven; 1: something failed or was not proven."
        })
final class EveningCheckCommand implements Callable<Integer> {
    static final String TOKEN = "EBBWATCH_TOKEN";
    private static final long LOOK_MILLIS = 1_000;

    @Option(
            names = "--service",
            paramLabel = "URL",
            defaultValue = "http://127.0.0.1:8710",
            description = "address of the service's page (${DEFAULT-VALUE})")
    private URI service;

    @Option(
            names = "--by",
            paramLabel = "NAME",
            defaultValue = "operator",
            description = "who checks (${DEFAULT-VALUE})")
    private String by;

    @Option(
            names = "--touch-minutes",
            paramLabel = "MINUTES",
            defaultValue = "10",
            description = "how long you will hold sensors, 0 to 30; 0: not at all (${DEFAULT-VALUE})")
    private int touchMinutes;

    @Spec
    private CommandSpec spec;

    private final Set<String> told = new HashSet<>();

    @Override
    public Integer call() throws Refusal, InterruptedException, IOException {
        PrintWriter out = spec.commandLine().getOut();
        var asked = new EveningService(service, token(System.getenv(TOKEN)));
        JsonNode check = asked.start(by, touchMinutes);
        String id = text(check, "id");
        out.println("Evening check " + id + ". Stay with the rack: for a while, limits against the room are paused.");
        if (touchMinutes > 0) {
            out.println("Hold the sensor of each cell between two fingers for a minute, one after the other.");
            out.println("Touch no cell that is warm, leaking or swelling, and no resistor: they burn skin.");
        }
        while (isGoingOn(check)) {
            news(check, out);
            Thread.sleep(LOOK_MILLIS);
            check = asked.look(id);
        }
        news(check, out);
        ask(asked, id, outlets(check), out);
        check = asked.finish(id);
        out.println();
        EveningText.lines(check).forEach(out::println);
        out.flush();
        return text(check, "verdict").equals("PASSED") ? 0 : 1;
    }

    static String token(String fromEnvironment) throws Refusal {
        if (fromEnvironment == null || fromEnvironment.isBlank()) {
            throw new Refusal("no token: put the operator's token into the environment variable " + TOKEN);
        }
        return fromEnvironment.strip();
    }

    /** Whether anything but people who should have the test alarm is waited for. */
    private static boolean isGoingOn(JsonNode check) {
        for (JsonNode awaited : check.get("awaits").values()) {
            if (!awaited.getStringValue().startsWith("somebody")) {
                return true;
            }
        }
        return false;
    }

    /** Tells what was proven since the last look. */
    private void news(JsonNode check, PrintWriter out) {
        for (JsonNode point : check.get("points").values()) {
            String line = EveningText.line(point);
            if (text(point, "proof").equals("PASSED") && told.add(text(point, "matter") + text(point, "about"))) {
                out.println(line);
            }
        }
        out.flush();
    }

    private static List<String> outlets(JsonNode check) {
        List<String> outlets = new ArrayList<>();
        for (JsonNode point : check.get("points").values()) {
            boolean waits = text(point, "matter").equals("OUTLET")
                    && !text(point, "proof").equals("PASSED");
            if (waits && !text(point, "about").isEmpty()) {
                outlets.add(text(point, "about"));
            }
        }
        return outlets;
    }

    private void ask(EveningService asked, String id, List<String> outlets, PrintWriter out)
            throws Refusal, IOException {
        var in = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
        for (String outlet : outlets) {
            out.print("Did the test alarm reach you by " + outlet + "? [y/N] ");
            out.flush();
            String answer = in.readLine();
            if (answer != null && answer.strip().toLowerCase(Locale.ROOT).startsWith("y")) {
                asked.heard(id, outlet, by);
            }
        }
    }

    private static String text(JsonNode node, String field) {
        return node.get(field).getStringValue();
    }
}
