package org.ebbwatch.handover;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.PassageRecords;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageTeller;

/** Makes hand-overs of passages of a rack at work: bundles and papers in one ZIP file. One at a time. */
public final class HandOverDesk {
    /** As many as are made while somebody waits. */
    public static final int MOST_PASSAGES = 50;

    private final PassageTeller records;
    private final BundleWriter bundles;

    /** Of these records, with bundles made by this writer. */
    public HandOverDesk(PassageTeller records, BundleWriter bundles) {
        this.records = records;
        this.bundles = bundles;
    }

    /**
     * A hand-over, to be closed when it was read; it takes room on the disk until then.
     *
     * @param passages 1 to {@link #MOST_PASSAGES}; one that is named twice counts once
     * @throws IllegalArgumentException if there are more or less, or no passage has one of these ids
     */
    public synchronized InputStream make(List<UUID> passages) throws IOException {
        Set<UUID> chosen = new LinkedHashSet<>(passages);
        if (chosen.isEmpty() || chosen.size() > MOST_PASSAGES) {
            throw new IllegalArgumentException("a hand-over names 1 to " + MOST_PASSAGES + " passages");
        }
        List<PassageCard> cards = new ArrayList<>();
        for (UUID passage : chosen) {
            cards.add(records.card(passage)
                    .orElseThrow(() -> new IllegalArgumentException("there is no passage " + passage)));
        }
        Path work = Files.createTempDirectory("ebbwatch-hand-over-");
        try {
            return zipped(cards, work);
        } finally {
            try (var files = Files.list(work)) {
                for (Path file : files.toList()) {
                    Files.delete(file);
                }
            }
            Files.delete(work);
        }
    }

    private InputStream zipped(List<PassageCard> cards, Path work) throws IOException {
        List<Path> parts = new ArrayList<>();
        for (PassageCard card : cards) {
            parts.add(bundles.write(PassageRecords.of(records, card), work).file());
        }
        parts.addAll(0, HandOver.write(List.copyOf(parts), work));
        Path whole = Files.createTempFile("ebbwatch-hand-over-", ".zip");
        try (var zip = new ZipOutputStream(Files.newOutputStream(whole))) {
            for (Path part : parts) {
                zip.putNextEntry(new ZipEntry(part.getFileName().toString()));
                Files.copy(part, zip);
            }
        }
        return Files.newInputStream(whole, StandardOpenOption.DELETE_ON_CLOSE);
    }
}
