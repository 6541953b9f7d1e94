package org.ebbwatch.rack;

import java.nio.file.Path;

/** A text of a rack file, or where it is kept instead. Secrets stand elsewhere, and only where to find them in the rack file. */
public sealed interface Given {

    /** As it stands in the rack file. */
    record Text(String text) implements Given {}

    /** In the environment, under this name. */
    record Environment(String variable) implements Given {}

    /** In this file, alone. */
    record InFile(Path file) implements Given {}
}
