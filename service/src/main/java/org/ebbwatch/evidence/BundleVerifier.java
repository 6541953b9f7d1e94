package org.ebbwatch.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.evidence.Verification.Account;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Harm;
import org.ebbwatch.evidence.container.DamageException;
import org.ebbwatch.evidence.container.NoBundleException;
import org.ebbwatch.evidence.container.Part;
import org.ebbwatch.evidence.container.SealedZipReader;
import org.ebbwatch.judge.JudgeVersion;

/**
 * Verifies a bundle by itself, without the service that made it: first whether it is intact, then whether this judge makes the
 * same verdict of what it holds. Unpacks at most 4 GiB and holds at most the record in memory (64 MiB).
 */
public final class BundleVerifier {
    private static final int RECORD_MOST = 64 << 20;

    private final SealedZipReader zip;
    private final List<Harm> harms = new ArrayList<>();

    private BundleVerifier(SealedZipReader zip) {
        this.zip = zip;
    }

    /** Verifies one file. */
    public static Verification verify(Path file) {
        try (SealedZipReader zip = SealedZipReader.open(file)) {
            return new BundleVerifier(zip).verify();
        } catch (DamageException e) {
            return damaged(e.part(), e.getMessage());
        } catch (NoBundleException e) {
            return new Verification.Unreadable(e.getMessage());
        } catch (NoSuchFileException e) {
            return new Verification.Unreadable("there is no such file");
        } catch (IOException e) {
            return new Verification.Unreadable("it cannot be read: " + e.getMessage());
        }
    }

    private Verification verify() throws IOException {
        Optional<UUID> passage = checkParts();
        try {
            zip.checkSeal();
        } catch (DamageException e) {
            harm(e.part(), e.getMessage());
        }
        if (passage.isEmpty() || !harms.isEmpty()) {
            return new Verification.Damaged(List.copyOf(harms));
        }
        BundleRecord record;
        try {
            record = BundleRecord.read(wholePart(RecordWriter.PATH, RECORD_MOST));
        } catch (IllegalArgumentException e) {
            return damaged(RecordWriter.PATH, e.getMessage());
        }
        return record.passage().equals(passage.get())
                ? judgeAgain(record)
                : damaged(Manifest.PATH, "it is the manifest of another passage");
    }

    private static Verification damaged(String part, String why) {
        return new Verification.Damaged(List.of(new Harm(part, why)));
    }

    // ---- integrity ----

    /** Holds every part against the manifest; gives the passage it is the manifest of. */
    private Optional<UUID> checkParts() throws IOException {
        for (String needed : List.of(TraceCsv.PATH, RecordWriter.PATH, Manifest.PATH)) {
            if (!zip.paths().contains(needed)) {
                harm(needed, "it is missing");
            }
        }
        List<Part> found = new ArrayList<>();
        for (String path : zip.paths()) {
            if (!path.equals(Manifest.PATH)) {
                try {
                    found.add(zip.digest(path));
                } catch (DamageException e) {
                    harm(path, e.getMessage());
                }
            }
        }
        return zip.paths().contains(Manifest.PATH) ? checkManifest(found) : Optional.empty();
    }

    private Optional<UUID> checkManifest(List<Part> found) throws IOException {
        try {
            byte[] text = wholePart(Manifest.PATH, Manifest.BYTES_MOST);
            Manifest manifest = Manifest.read(text);
            found.forEach(part -> hold(part, manifest));
            for (Part part : manifest.parts()) {
                if (!zip.paths().contains(part.path())) {
                    harm(part.path(), "it is missing");
                }
            }
            if (harms.isEmpty() && !Arrays.equals(text, new Manifest(manifest.passage(), found).text())) {
                harm(Manifest.PATH, "it is not written as the manifest of these parts is");
            }
            return Optional.of(manifest.passage());
        } catch (DamageException e) {
            harm(e.part(), e.getMessage());
        } catch (IllegalArgumentException e) {
            harm(Manifest.PATH, e.getMessage());
        }
        return Optional.empty();
    }

    private void hold(Part found, Manifest manifest) {
        Optional<Part> listed = manifest.parts().stream()
                .filter(part -> part.path().equals(found.path()))
                .findFirst();
        if (listed.isEmpty()) {
            harm(found.path(), "the manifest does not list it");
        } else if (listed.get().bytes() != found.bytes()) {
            harm(
                    found.path(),
                    "it has " + found.bytes() + " bytes, the manifest says "
                            + listed.get().bytes());
        } else if (!listed.get().sha256().equals(found.sha256())) {
            harm(found.path(), "its SHA-256 is not the one in the manifest");
        }
    }

    private void harm(String part, String why) {
        if (harms.stream().noneMatch(harm -> harm.part().equals(part))) {
            harms.add(new Harm(part, why));
        }
    }

    private byte[] wholePart(String path, int most) throws IOException {
        if (zip.bytes(path) > most) {
            throw new DamageException(path, "it has more than the " + most + " bytes that one may have");
        }
        try (InputStream in = zip.part(path)) {
            return in.readAllBytes();
        }
    }

    // ---- the verdict ----

    private Verification judgeAgain(BundleRecord record) throws IOException {
        boolean sameJudge = record.origin().judgeVersion() == JudgeVersion.NUMBER;
        var judging = new JudgingAgain(record);
        Again again;
        try (InputStream trace = zip.part(TraceCsv.PATH)) {
            again = judging.judge(trace)
                    .differenceFrom(record.verdict())
                    .<Again>map(Again.Different::new)
                    .orElseGet(Again.Same::new);
        } catch (DamageException e) {
            if (sameJudge) {
                return damaged(e.part(), e.getMessage());
            }
            again = new Again.Impossible(e.part() + ": " + e.getMessage());
        }
        return new Verification.Judged(account(record, judging), JudgeVersion.NUMBER, again);
    }

    private Account account(BundleRecord record, JudgingAgain judging) throws IOException {
        Verdict verdict = record.verdict();
        return new Account(
                record.passage().toString(),
                record.item().text("tag"),
                record.origin().software(),
                record.origin().judgeVersion(),
                record.simulatedSpeed(),
                zip.bytes(),
                zip.paths().size(),
                verdict.end().readings(),
                judging.firstUtc(),
                judging.lastUtc(),
                verdict.end().phase(),
                verdict.end().reason(),
                verdict.phases().size(),
                verdict.findings().size(),
                record.cautions());
    }
}
