package org.ebbwatch.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.charset.Charset;
import java.util.Map;
import java.util.concurrent.Callable;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Calibrates a channel against a meter, with a running service. */
@Command(
        name = "calibrate",
        mixinStandardHelpOptions = true,
        description = {
            "Calibrates a channel of a running service at shorted leads, about 0.5 V and about 4 V. See docs/calibration.md.",
            "Take the cell off first: leads are shorted, never a cell.",
            "The operator's token is taken from the environment variable EBBWATCH_TOKEN.",
            "Exit code 0: kept; 1: given up."
        })
final class CalibrateCommand implements Callable<Integer> {
    @Option(
            names = "--service",
            paramLabel = "URL",
            defaultValue = "http://127.0.0.1:8710",
            description = "address of the service's page (${DEFAULT-VALUE})")
    private URI service;

    @Option(names = "--board", paramLabel = "NAME", required = true, description = "its name in the rack file")
    private String board;

    @Option(names = "--channel", paramLabel = "NUMBER", required = true, description = "from 0")
    private int channel;

    @Option(names = "--meter", paramLabel = "NAME", required = true, description = "what you call the meter")
    private String meter;

    @Option(
            names = "--meter-percent",
            paramLabel = "PERCENT",
            required = true,
            description = "its accuracy by its manual, in percent of the reading, such as 0.5")
    private double meterPercent;

    @Option(
            names = "--meter-volts",
            paramLabel = "VOLTS",
            required = true,
            description = "and besides: digits times the volts of one digit, such as 0.002")
    private double meterVolts;

    @Option(
            names = "--by",
            paramLabel = "NAME",
            defaultValue = "operator",
            description = "who calibrates (${DEFAULT-VALUE})")
    private String by;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal, IOException {
        PrintWriter out = spec.commandLine().getOut();
        var in = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
        var talk = new CalibrationTalk(
                new ServiceCall(service, ServiceCall.token(System.getenv())),
                question -> {
                    out.print(question);
                    out.flush();
                    String answer = in.readLine();
                    return answer == null ? "q" : answer;
                },
                out);
        boolean kept = talk.calibrate(Map.of(
                "board", board,
                "channel", channel,
                "meter", meter,
                "meterPercent", meterPercent,
                "meterVolts", meterVolts,
                "by", by));
        return kept ? 0 : 1;
    }
}
