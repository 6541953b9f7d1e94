package org.ebbwatch.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ebbwatch.evidence.BundleVerifier;
import org.ebbwatch.evidence.Verification;
import org.ebbwatch.evidence.signature.SignerKey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Verifies bundles, without the service that made them. */
@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        description = {
            "Checks that bundles are intact and judges each of them again from its own readings. Needs nothing but the files.",
            "See docs/bundle.md."
        },
        exitCodeListHeading = "%nExit codes (of several files, the worst: 1, 5, 3, 4, 0):%n",
        exitCodeList = {
            "0:intact, and judged again the same",
            "1:damaged, or judged again otherwise by the same judge",
            "2:wrong call",
            "3:cannot be read as a bundle",
            "4:intact, but judged by another version of the judge; see what judging again gave",
            "5:intact, but not signed by the key that --key names"
        })
final class VerifyCommand implements Callable<Integer> {
    /** Exit codes from the worst to the best. */
    private static final List<Integer> WORST_FIRST = List.of(1, 5, 3, 4, 0);

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "bundles")
    private List<Path> files;

    @Option(
            names = "--key",
            paramLabel = "KEY",
            description = "the signer's key as `ebbwatch key` shows it, got by another way than the bundle")
    private String key;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        Optional<SignerKey> known = known();
        PrintWriter out = spec.commandLine().getOut();
        int worst = 0;
        for (Path file : files) {
            Verification verification = BundleVerifier.verify(file);
            out.println(file.getFileName());
            VerificationText.lines(verification, known).forEach(line -> out.println("  " + line));
            out.flush();
            int code = VerificationText.exitCode(verification, known);
            worst = WORST_FIRST.indexOf(code) < WORST_FIRST.indexOf(worst) ? code : worst;
        }
        return worst;
    }

    private Optional<SignerKey> known() {
        try {
            return Optional.ofNullable(key).map(SignerKey::parse);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "--key: " + e.getMessage());
        }
    }
}
