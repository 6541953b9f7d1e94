package org.ebbwatch.cli;

import java.io.PrintWriter;
import org.ebbwatch.evidence.Origin;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/**
 * The program: {@code ebbwatch COMMAND}. Exit codes: 0 done, 1 done and something is wrong, 2 wrong call, 3 refused, 4 verified
 * by another judge than the one that judged, 5 not signed by the key that was named.
 */
@Command(
        name = "ebbwatch",
        mixinStandardHelpOptions = true,
        version = Origin.SOFTWARE,
        description = "Watches a rack of end-of-life lithium cells being emptied and judges each of them.",
        footer = {
            "",
            "It is a second pair of eyes, no safety device. Cells can burn: follow your local code and docs/safety.md."
        },
        subcommands = {
            ServeCommand.class,
            DemoCommand.class,
            PortsCommand.class,
            SchemaCommand.class,
            CheckCommand.class,
            CalibrateCommand.class,
            ReplayCommand.class,
            BundleCommand.class,
            VerifyCommand.class,
            KeyCommand.class,
            HandOverCommand.class,
            BackupCommand.class,
            RestoreCommand.class,
            ExportCommand.class,
            RetentionCommand.class,
            DeleteCommand.class,
            TokenCommand.class,
            EveningCheckCommand.class,
            MorningReportCommand.class,
            SizeCommand.class
        })
public final class Ebbwatch implements Runnable {
    @Spec
    private CommandSpec spec;

    public static void main(String[] args) {
        System.exit(execute(args));
    }

    static int execute(String... args) {
        return commandLine().execute(args);
    }

    /** The program, ready to be run. */
    public static CommandLine commandLine() {
        var commandLine = new CommandLine(new Ebbwatch());
        commandLine.setExecutionExceptionHandler((failure, command, parsed) -> refuse(command.getErr(), failure));
        return commandLine;
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    private static int refuse(PrintWriter err, Exception failure) throws Exception {
        if (failure instanceof Refusal refusal) {
            err.println("ebbwatch: " + refusal.getMessage());
            return 3;
        }
        throw failure;
    }

    /** A command cannot do what it was asked; the message says why and what to do. */
    static final class Refusal extends Exception {
        private static final long serialVersionUID = 1;

        Refusal(String message) {
            super(message);
        }
    }
}
