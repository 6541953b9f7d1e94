package org.ebbwatch.cli;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.rack.DatabaseEntry;
import org.ebbwatch.rack.RackFile;
import org.ebbwatch.store.PostgresLogin;
import org.ebbwatch.store.Records;
import org.ebbwatch.store.StorageException;

/**
 * Where records are kept.
 *
 * @param folder of all that is in no database
 * @param database the PostgreSQL database; empty: an H2 file in the folder
 */
record RecordPlace(Path folder, Optional<PostgresLogin> database) {
    private static final int ATTEMPTS = 60;

    /** Records that are in a folder alone. */
    static RecordPlace of(Path folder) {
        return new RecordPlace(folder, Optional.empty());
    }

    /**
     * What a rack file says of it.
     *
     * @param environment may hold the password of the database
     * @throws Refusal if the password cannot be found
     */
    static RecordPlace of(RackFile rackFile, Map<String, String> environment) throws Refusal {
        if (rackFile.database().isEmpty()) {
            return of(rackFile.storage());
        }
        DatabaseEntry entry = rackFile.database().get();
        try {
            String password = new GivenTexts(environment).text(entry.password());
            var login = new PostgresLogin(entry.url(), entry.user(), password);
            return new RecordPlace(rackFile.storage(), Optional.of(login));
        } catch (IllegalArgumentException e) {
            throw new Refusal("the database of the rack file cannot be used: " + e.getMessage());
        }
    }

    /**
     * Opens or begins the records; a database that does not answer is waited for about a minute.
     *
     * @throws Refusal if they cannot be opened
     */
    StoredRack open() throws Refusal {
        try {
            return database.isPresent()
                    ? StoredRack.of(Records.inPostgres(folder, database.get(), ATTEMPTS))
                    : StoredRack.open(folder);
        } catch (StorageException e) {
            throw new Refusal("the records in " + this + " cannot be opened: " + e.getMessage()
                    + ". If another service uses them, stop it or name another folder.");
        }
    }

    /** As people are told: without password. */
    @Override
    public String toString() {
        return folder + database.map(login -> " and the database of " + login).orElse("");
    }
}
