package org.ebbwatch.evidence;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.ebbwatch.evidence.Written.Became;
import org.ebbwatch.evidence.container.SealedZipWriter;
import org.ebbwatch.evidence.signature.SigningKey;

/**
 * Writes bundles. A bundle is written beside its place and moved there whole; one that is there already is never overwritten.
 * The same records and key give the same parts, byte for byte. Memory use does not grow with the number of readings.
 */
public final class BundleWriter {
    private static final String UNFINISHED = ".part";

    private final Origin origin;
    private final SigningKey key;

    /** Bundles made by this program and signed by this key. */
    public BundleWriter(Origin origin, SigningKey key) {
        this.origin = origin;
        this.key = key;
    }

    /**
     * Writes the bundle of a passage into a folder, which is made where it is missing.
     *
     * @throws IOException if it cannot be written, or would be 4 GiB or more; then nothing is left of it
     */
    public Written write(PassageRecords records, Path folder) throws IOException {
        Files.createDirectories(folder);
        Path target = folder.resolve(
                BundleName.of(records.card().cell().tag(), records.card().id()));
        Path unfinished = folder.resolve(target.getFileName() + UNFINISHED);
        try {
            Verdict verdict = fill(unfinished, records);
            return new Written(
                    target,
                    place(unfinished, target),
                    verdict.end().phase(),
                    verdict.end().readings());
        } catch (UncheckedIOException e) {
            throw new IOException(e.getCause().getMessage(), e);
        } finally {
            Files.deleteIfExists(unfinished);
        }
    }

    private Verdict fill(Path file, PassageRecords records) throws IOException {
        try (SealedZipWriter zip = SealedZipWriter.create(file)) {
            Telling telling;
            try (OutputStream out = zip.part(TraceCsv.PATH)) {
                var trace =
                        new TraceCsvWriter(out, records.card().cell().string().isPresent());
                telling = new Telling(records.card(), trace);
                records.journal().accept(telling);
                trace.flush();
            }
            byte[] record = RecordWriter.text(records, origin, telling);
            write(zip, RecordWriter.PATH, record);
            write(zip, ChainPart.PATH, ChainPart.text(records.card().id(), records.chain()));
            write(zip, ReportPart.PATH, ReportPart.of(record, telling, key.signer()));
            write(zip, DataPackagePart.PATH, DataPackagePart.of(records.card(), telling.lastLabel(), zip.parts()));
            byte[] manifest = new Manifest(records.card().id(), zip.parts()).text();
            write(zip, Manifest.PATH, manifest);
            write(zip, SignaturePart.PATH, SignaturePart.of(manifest, key).text());
            zip.seal();
            return telling.verdict();
        }
    }

    private static void write(SealedZipWriter zip, String path, byte[] content) throws IOException {
        try (OutputStream out = zip.part(path)) {
            out.write(content);
        }
    }

    private static Became place(Path unfinished, Path target) throws IOException {
        if (Files.exists(target)) {
            return Files.mismatch(unfinished, target) < 0 ? Became.THERE_ALREADY : Became.ANOTHER_IS_THERE;
        }
        try {
            Files.move(unfinished, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(unfinished, target);
        }
        return Became.WRITTEN;
    }
}
