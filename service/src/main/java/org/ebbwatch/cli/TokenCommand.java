package org.ebbwatch.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ebbwatch.access.TokenFile;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes a new operator's token. */
@Command(
        name = "token",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a new operator's token and shows it this once; the one before is refused from now on.",
            "A service that runs over the same records need not be stopped."
        })
final class TokenCommand implements Callable<Integer> {
    @Option(names = "--storage", paramLabel = "DIR", required = true, description = "folder of the service's records")
    private Path storage;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal {
        if (!Files.isDirectory(storage)) {
            throw new Refusal("there is no folder " + storage + "; a service makes it when it first starts");
        }
        try {
            show(new TokenFile(storage).renew(), spec.commandLine().getOut());
            return 0;
        } catch (IOException e) {
            throw new Refusal("the token cannot be kept in " + storage + ": " + e.getMessage());
        }
    }

    /** Shows a token that was just made; nothing else ever does. */
    static void show(String token, PrintWriter out) {
        out.println("The operator's token, shown this once. Whoever has it can act on the rack:");
        out.println();
        out.println("  " + token);
        out.println();
        out.println("Make another one, and so revoke it, by `ebbwatch token --storage DIR`.");
        out.flush();
    }
}
