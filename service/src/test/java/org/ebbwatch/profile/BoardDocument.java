package org.ebbwatch.profile;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The YAML that stands in a page of docs/boards. */
public final class BoardDocument {
    private static final Path DOCS =
            Path.of(System.getProperty("basedir", "")).toAbsolutePath().resolve("../docs/boards");

    private final String text;

    private BoardDocument(String text) {
        this.text = text;
    }

    /** A page, such as text.md. */
    public static BoardDocument named(String name) throws IOException {
        return new BoardDocument(Files.readString(DOCS.resolve(name), UTF_8));
    }

    /** The first block of YAML after a phrase. */
    public String yamlAfter(String phrase) {
        int from = text.indexOf(phrase);
        Matcher block = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL).matcher(text);
        if (from < 0 || !block.find(from)) {
            throw new AssertionError("no YAML after \"" + phrase + "\"");
        }
        return block.group(1);
    }
}
