package org.ebbwatch.rack;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Reads texts that a rack file holds, or says where to find. */
final class GivenReader {
    private static final Pattern VARIABLE = Pattern.compile("[A-Za-z_][A-Za-z0-9_]{0,99}");
    private static final String ENVIRONMENT = "Environment";
    private static final String FILE = "File";

    private final Faults faults;
    private final Path folder;

    GivenReader(Faults faults, Path folder) {
        this.faults = faults;
        this.folder = folder;
    }

    /** The keys under which such a text can be given. */
    static List<String> keys(String key) {
        return List.of(key, key + ENVIRONMENT, key + FILE);
    }

    /** Whether it is given in any way. */
    static boolean has(YamlMapping mapping, String key) {
        return keys(key).stream().anyMatch(mapping::has);
    }

    /** A text that may stand in the rack file. */
    Optional<Given> text(YamlMapping mapping, String key) {
        String allowed = "give " + key + ", or with " + key + ENVIRONMENT
                + " the name of the environment variable that holds it, or with " + key + FILE + " its file";
        return read(mapping, key, allowed);
    }

    /** A text that may not. */
    Optional<Given> secret(YamlMapping mapping, String key) {
        String allowed = "give with " + key + ENVIRONMENT
                + " the name of the environment variable that holds it, or with " + key + FILE + " its file";
        if (mapping.has(key)) {
            mapping.fault(key, key + " is a secret and does not stand in a rack file; " + allowed);
            return Optional.empty();
        }
        return read(mapping, key, allowed);
    }

    private Optional<Given> read(YamlMapping mapping, String key, String allowed) {
        List<String> found = keys(key).stream().filter(mapping::has).toList();
        if (found.size() != 1) {
            if (keys(key).stream().noneMatch(mapping::isMisspelt)) {
                faults.add(mapping.line(), found.isEmpty() ? allowed : allowed + "; only one of them");
            }
            return Optional.empty();
        }
        String given = found.get(0);
        Optional<String> text = mapping.text(given, allowed);
        if (given.equals(key)) {
            return text.map(Given.Text::new);
        }
        if (given.equals(key + FILE)) {
            return text.map(file -> new Given.InFile(folder.resolve(file)));
        }
        if (text.isPresent() && !VARIABLE.matcher(text.get()).matches()) {
            mapping.fault(given, given + " is a name of letters, digits and underscores, not a value");
            return Optional.empty();
        }
        return text.map(Given.Environment::new);
    }
}
