package org.ebbwatch.cli;

import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.ebbwatch.cli.Ebbwatch.Refusal;

/** Guides a person through the calibration of one channel, point by point. */
final class CalibrationTalk {
    private static final String CALIBRATIONS = "/api/v1/calibrations";
    private static final String QUIT = "q";

    private final ServiceCall service;
    private final Person person;
    private final PrintWriter out;

    /** Whoever is asked. */
    interface Person {
        /** The answer to a question; "q" where there is none any more. */
        String answer(String question) throws IOException;
    }

    CalibrationTalk(ServiceCall service, Person person, PrintWriter out) {
        this.service = service;
        this.person = person;
        this.out = out;
    }

    /**
     * Calibrates.
     *
     * @param begin which channel, against which meter, and who
     * @return whether it was kept
     */
    boolean calibrate(Map<String, Object> begin) throws Refusal, IOException {
        JsonNode running = service.post(CALIBRATIONS, begin).get("running");
        String id = running.get("id").getStringValue();
        out.printf(
                "Calibrating channel %s of board %s (%s).%n",
                begin.get("channel"),
                begin.get("board"),
                running.get("serialNumber").getStringValue());
        out.println(
                "CAUTION: first take the cell off this channel. You will short the channel's LEADS. Never short a cell:");
        out.println("it heats up within seconds and can burn. Take the load off as well. Give up at any time with q.");
        boolean done =
                point(id, "SHORTED", "Clip the channel's two leads together, nothing else on them. Enter when done: ")
                        && point(
                                id,
                                "LOW",
                                "Put 0.3 to 0.8 V on the leads, from a supply or divider. What does the meter show at them, in V? ")
                        && point(id, "HIGH", "Put 3.0 to 4.5 V on the leads. What does the meter show at them, in V? ")
                        && keep(id);
        if (!done) {
            step(id, Map.of("step", "GIVEN_UP"));
            out.println("Given up; nothing was kept.");
        }
        out.flush();
        return done;
    }

    /** Takes a point, again and again until it is good; false where the person gives up. */
    private boolean point(String id, String step, String question) throws IOException {
        while (true) {
            String answer = person.answer(question).strip();
            if (answer.equalsIgnoreCase(QUIT)) {
                return false;
            }
            Map<String, Object> body = new LinkedHashMap<>(Map.of("step", step));
            try {
                if (!step.equals("SHORTED")) {
                    body.put("volts", Double.valueOf(answer));
                }
                JsonNode taken = step(id, body).get("running");
                JsonNode point = taken.get(step.toLowerCase(Locale.ROOT));
                out.printf(
                        Locale.ROOT,
                        "  the board reads %.4f V, scattering by %.1f mV%n",
                        point.get("readVolts").getDoubleValue(),
                        1e3 * point.get("deviationVolts").getDoubleValue());
                return true;
            } catch (NumberFormatException e) {
                out.println("  Volts are written with a point and without the unit, such as 0.5021.");
            } catch (Refusal refused) {
                out.println("  Not taken: " + refused.getMessage());
            }
        }
    }

    private boolean keep(String id) throws Refusal, IOException {
        JsonNode found = service.get(CALIBRATIONS).get("running").get("found");
        double offset = found.get("offsetVolts").getDoubleValue();
        double blind = found.get("blindBelowVolts").getDoubleValue();
        out.printf(
                Locale.ROOT,
                "Found: volts = %.5f x what the board reads %+.4f V; the point farthest off lies %.1f mV from that line.%n",
                found.get("gain").getDoubleValue(),
                offset,
                1e3 * found.get("residualVolts").getDoubleValue());
        out.printf(
                Locale.ROOT,
                "U (k = 2): %.1f mV at 0 V, and %.2f %% of the voltage.%n",
                1e3 * found.get("expandedVoltsAtZero").getDoubleValue(),
                100 * found.get("expandedGain").getDoubleValue());
        if (blind > 0) {
            out.printf(
                    Locale.ROOT,
                    "CAUTION: near 0 V this channel is off by up to %.3f V. Either a value was misread: then answer n and begin again."
                            + " Or it cannot see small voltages: a cell on it may never be found empty.%n",
                    blind);
        }
        if (!found.get("applied").getBooleanValue()) {
            out.println(
                    "The board's own scale holds and is known better than by this meter: it stands, this is kept beside it.");
        }
        if (!person.answer("Keep it? [y/N] ").strip().toLowerCase(Locale.ROOT).startsWith("y")) {
            return false;
        }
        step(id, Map.of("step", "KEPT"));
        out.println(
                "Kept. The channel goes by it from its next reading on. Take the supply off before a cell goes on.");
        return true;
    }

    private JsonNode step(String id, Map<String, Object> body) throws Refusal {
        return service.post(CALIBRATIONS + '/' + id + "/steps", body);
    }
}
