package org.ebbwatch.rack;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads which database a rack file names. */
final class DatabaseReader {
    private static final List<String> KEYS = Stream.of(List.of("url", "user"), GivenReader.keys("password"))
            .flatMap(List::stream)
            .toList();
    private static final Pattern URL = Pattern.compile("jdbc:postgresql://[^/?#\\s@]+/[^/?#\\s]+(\\?\\S*)?");
    private static final Pattern LOGIN = Pattern.compile("[?&](user|password|sslpassword)=");
    private static final String ALLOWED =
            "url is jdbc:postgresql://HOST/DATABASE or jdbc:postgresql://HOST:PORT/DATABASE,"
                    + " with parameters behind a question mark";

    private final Faults faults;
    private final GivenReader given;

    DatabaseReader(Faults faults, Path folder) {
        this.faults = faults;
        this.given = new GivenReader(faults, folder);
    }

    Optional<DatabaseEntry> read(Node node) {
        YamlMapping database = new YamlMapping(node, "database", KEYS, faults);
        Optional<String> url = database.text("url", ALLOWED).filter(text -> isUrl(text, database));
        Optional<String> user = database.text("user", "user is the name of a role of the database");
        Optional<Given> password = given.secret(database, "password");
        return url.isPresent() && user.isPresent() && password.isPresent()
                ? Optional.of(new DatabaseEntry(url.get(), user.get(), password.get()))
                : Optional.empty();
    }

    private static boolean isUrl(String text, YamlMapping database) {
        if (LOGIN.matcher(text).find()) {
            database.fault("url", "url holds no user and no password; give them as keys of their own");
            return false;
        }
        if (!URL.matcher(text).matches()) {
            database.fault("url", ALLOWED);
            return false;
        }
        return true;
    }
}
