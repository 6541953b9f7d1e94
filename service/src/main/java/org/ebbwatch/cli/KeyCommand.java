package org.ebbwatch.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.evidence.signature.SigningKey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows the public half of the key that signs bundles. */
@Command(
        name = "key",
        mixinStandardHelpOptions = true,
        description = {
            "Shows the public key by which bundles of these records are signed; it is made where there is none yet.",
            "Tell it to receivers by another way than the bundles, so that they can name it to `ebbwatch verify --key`."
        })
final class KeyCommand implements Callable<Integer> {
    @Option(names = "--storage", paramLabel = "DIR", required = true, description = "folder of the service's records")
    private Path storage;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal {
        if (!Files.isDirectory(storage)) {
            throw new Refusal("there is no folder " + storage + "; a service makes it when it first starts");
        }
        SigningKey key = ServiceHost.signingKey(storage);
        PrintWriter out = spec.commandLine().getOut();
        out.println(key.signer());
        out.flush();
        return 0;
    }
}
