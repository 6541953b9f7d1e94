package org.ebbwatch.rack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.judge.procedure.BuiltIn;
import org.ebbwatch.passage.Wiring;

/**
 * A rack file that holds together: every name is known, every number in its range, no two boards on one port, no two cells on one
 * channel. {@code docs/rack-file.md} describes the format.
 *
 * @param storage folder of the service's records
 * @param database the PostgreSQL database that holds most of them; empty: an H2 file in the folder
 * @param http where the page is served
 * @param alarms how they reach a person
 * @param morningReport when it is sent; empty: not by itself
 * @param signOfLife where it goes; empty: nowhere
 * @param boards at least one
 * @param cells on their channels; may be empty
 * @param wirings what is wired beyond the boards' own word, by their names
 */
public record RackFile(
        Path storage,
        Optional<DatabaseEntry> database,
        HttpEntry http,
        AlarmEntry alarms,
        Optional<MorningEntry> morningReport,
        Optional<LifeEntry> signOfLife,
        List<BoardEntry> boards,
        List<CellEntry> cells,
        Map<String, Wiring> wirings) {

    /** The procedures a rack file may name; the first is the usual one. */
    public static final List<String> PROCEDURES = BuiltIn.keys();

    public RackFile {
        boards = List.copyOf(boards);
        cells = List.copyOf(cells);
        wirings = Map.copyOf(wirings);
    }

    /**
     * Reads a rack file; relative folders in it count from its own.
     *
     * @throws RackFileFaulty if anything in it is wrong, with all that is
     * @throws IOException if it cannot be read
     */
    public static RackFile read(Path file) throws RackFileFaulty, IOException {
        Path folder = file.toAbsolutePath().getParent();
        return parse(Files.readString(file), file.toString(), folder);
    }

    /**
     * Reads the text of a rack file.
     *
     * @param source what to call it in messages
     * @param folder where relative folders in it count from
     */
    public static RackFile parse(String text, String source, Path folder) throws RackFileFaulty {
        return new RackFileReader(new Faults(source), folder).read(text);
    }
}
