package org.ebbwatch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.ebbwatch.rack.Given;

/** Finds the texts a rack file speaks of, which may be secrets, and shows them nowhere. */
final class GivenTexts {
    private static final int LONGEST_BYTES = 10_000;

    private final Map<String, String> environment;

    GivenTexts(Map<String, String> environment) {
        this.environment = environment;
    }

    /**
     * The text itself.
     *
     * @throws IllegalArgumentException if it is not where it should be
     */
    String text(Given given) {
        if (given instanceof Given.Environment named) {
            String value = environment.getOrDefault(named.variable(), "");
            if (value.isBlank()) {
                throw new IllegalArgumentException("the environment holds no " + named.variable());
            }
            return value;
        }
        if (given instanceof Given.InFile kept) {
            return content(kept.file());
        }
        return ((Given.Text) given).text();
    }

    /** The line break that editors put behind the last line is no part of a secret. */
    private static String content(Path file) {
        try {
            if (Files.size(file) > LONGEST_BYTES) {
                throw new IllegalArgumentException("the file " + file + " is longer than " + LONGEST_BYTES + " bytes");
            }
            String content = Files.readString(file).replaceFirst("\\R$", "");
            if (content.isBlank()) {
                throw new IllegalArgumentException("the file " + file + " is empty");
            }
            return content;
        } catch (IOException e) {
            throw new IllegalArgumentException(
                    "the file " + file + " cannot be read (" + e.getClass().getSimpleName() + ')', e);
        }
    }
}
