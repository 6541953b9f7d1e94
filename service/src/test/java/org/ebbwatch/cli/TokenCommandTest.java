package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ebbwatch.access.TokenFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class TokenCommandTest {
    private static final Pattern TOKEN = Pattern.compile("(?m)^  ([A-Za-z0-9_-]{43})$");

    @TempDir
    private Path storage;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... arguments) {
        CommandLine program = Ebbwatch.commandLine();
        program.setOut(new PrintWriter(out));
        program.setErr(new PrintWriter(err));
        return program.execute(arguments);
    }

    @Test
    void a_new_token_is_shown_and_the_one_before_is_refused() throws IOException {
        var tokens = new TokenFile(storage);
        String before = tokens.renew();

        assertThat(run("token", "--storage", storage.toString())).isZero();
        Matcher shown = TOKEN.matcher(out.toString());
        assertThat(shown.find()).isTrue();
        assertThat(tokens.admits(shown.group(1))).isTrue();
        assertThat(tokens.admits(before)).isFalse();
    }

    @Test
    void a_folder_that_is_not_there_is_refused() {
        assertThat(run("token", "--storage", storage.resolve("nowhere").toString()))
                .isEqualTo(3);
        assertThat(err.toString()).contains("there is no folder");
    }
}
