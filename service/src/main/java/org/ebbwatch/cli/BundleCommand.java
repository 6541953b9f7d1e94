package org.ebbwatch.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.evidence.PassageRecords;
import org.ebbwatch.evidence.Written;
import org.ebbwatch.evidence.Written.Became;
import org.ebbwatch.evidence.signature.SigningKey;
import org.ebbwatch.intake.CardedPassages;
import org.ebbwatch.intake.IntakeBook;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.store.StorageException;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes bundles from the records of a service that is stopped. */
@Command(
        name = "bundle",
        mixinStandardHelpOptions = true,
        description = {
            "Writes the sealed bundle of every passage, or of one passage, or of all passages of one cell.",
            "The service that keeps the records must be stopped. See docs/bundle.md."
        })
final class BundleCommand implements Callable<Integer> {
    static final String DATABASE = "ebbwatch.mv.db";

    @ArgGroup(multiplicity = "1")
    private Source source;

    @Option(names = "--to", paramLabel = "FOLDER", required = true, description = "where the bundles go")
    private Path folder;

    @ArgGroup
    private Choice choice;

    @Spec
    private CommandSpec spec;

    private static final class Source {
        @Option(names = "--storage", paramLabel = "DIR", description = "the folder of the records")
        private Path storage;

        @Option(names = "--rack", paramLabel = "RACK_FILE", description = "the rack file that says where they are")
        private Path rackFile;

        RecordPlace place() throws Refusal {
            RecordPlace place = rackFile == null
                    ? RecordPlace.of(storage)
                    : RecordPlace.of(RackFiles.read(rackFile), System.getenv());
            if (place.database().isEmpty() && !Files.exists(place.folder().resolve(DATABASE))) {
                throw new Refusal("there are no records in " + place + ": it holds no " + DATABASE);
            }
            return place;
        }
    }

    private static final class Choice {
        @Option(names = "--passage", paramLabel = "ID", description = "only the passage with this id")
        private UUID passage;

        @Option(names = "--tag", paramLabel = "TAG", description = "only passages of the cell with this tag")
        private String tag;

        boolean takes(PassageCard card) {
            return passage == null ? card.cell().tag().equals(tag) : card.id().equals(passage);
        }
    }

    @Override
    public Integer call() throws Refusal {
        RecordPlace place = source.place();
        PrintWriter out = spec.commandLine().getOut();
        try (StoredRack rack = place.open()) {
            List<PassageCard> cards = rack.cards().stream()
                    .filter(card -> Optional.ofNullable(choice)
                            .map(only -> only.takes(card))
                            .orElse(true))
                    .toList();
            if (cards.isEmpty()) {
                throw new Refusal("the records in " + place + " hold no such passage");
            }
            return write(rack, cards, ServiceHost.signingKey(place.folder()), folder, out) ? 0 : 1;
        } catch (IOException | StorageException e) {
            throw new Refusal("no bundle was written further: " + e.getMessage());
        } finally {
            out.flush();
        }
    }

    /** Writes the bundles of these passages and tells of each; says whether all of them are there now. */
    static boolean write(StoredRack rack, List<PassageCard> cards, SigningKey key, Path folder, PrintWriter out)
            throws IOException {
        rack.seal();
        var writer = new BundleWriter(Origin.current(), key);
        var passages = new CardedPassages(rack, IntakeBook.of(rack.intakes()));
        boolean all = true;
        for (PassageCard card : cards) {
            Written written = writer.write(PassageRecords.of(passages, card), folder);
            String became =
                    switch (written.became()) {
                        case WRITTEN -> "written";
                        case THERE_ALREADY -> "there already, the same";
                        case ANOTHER_IS_THERE -> "NOT WRITTEN: another file of that name is there; move it away";
                    };
            out.printf(
                    "%-40s %-10s %9d readings  %s%n",
                    written.file().getFileName(), written.phase(), written.readings(), became);
            out.flush();
            all &= written.became() != Became.ANOTHER_IS_THERE;
        }
        return all;
    }
}
