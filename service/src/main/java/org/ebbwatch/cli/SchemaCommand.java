package org.ebbwatch.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints the JSON Schema of rack files. */
@Command(
        name = "schema",
        mixinStandardHelpOptions = true,
        description = {
            "Prints the JSON Schema of rack files, by which editors complete and check them. See docs/rack-file.md.",
        })
final class SchemaCommand implements Callable<Integer> {
    private static final String SCHEMA = "/schema/rack.schema.json";

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        try (InputStream schema = Objects.requireNonNull(SchemaCommand.class.getResourceAsStream(SCHEMA))) {
            out.print(new String(schema.readAllBytes(), StandardCharsets.UTF_8));
        }
        out.flush();
        return 0;
    }
}
