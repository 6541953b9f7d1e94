package org.ebbwatch.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.evidence.Verification.Account;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Harm;
import org.ebbwatch.evidence.container.DamageException;
import org.ebbwatch.evidence.container.NoBundleException;
import org.ebbwatch.evidence.container.SealedZipReader;
import org.ebbwatch.evidence.signature.SignerKey;
import org.ebbwatch.judge.JudgeVersion;

/**
 * Verifies a bundle by itself, without the service that made it: first whether it is intact and
 * who signed it, then whether its chain is whole and whether this judge makes the same verdict of what it holds. Unpacks at most 4 GiB and holds at most the record in memory (64 MiB).
 */
public final class BundleVerifier {
    private static final int RECORD_MOST = 64 << 20;

    private final SealedZipReader zip;

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
        PartsCheck parts = PartsCheck.of(zip);
        if (parts.passage().isEmpty() || !parts.harms().isEmpty()) {
            return new Verification.Damaged(parts.harms());
        }
        BundleRecord record;
        try {
            record = BundleRecord.read(PartsCheck.whole(zip, RecordWriter.PATH, RECORD_MOST));
        } catch (IllegalArgumentException e) {
            return damaged(RecordWriter.PATH, e.getMessage());
        }
        return record.passage().equals(parts.passage().get())
                ? judgeAgain(record, parts.signer())
                : damaged(Manifest.PATH, "it is the manifest of another passage");
    }

    private ChainCheck chain(UUID passage) throws IOException {
        if (!zip.paths().contains(ChainPart.PATH)) {
            return ChainCheck.none();
        }
        try {
            return ChainCheck.of(ChainPart.read(PartsCheck.whole(zip, ChainPart.PATH, ChainPart.BYTES_MOST), passage));
        } catch (IllegalArgumentException e) {
            throw new DamageException(ChainPart.PATH, e.getMessage());
        }
    }

    private static Verification damaged(String part, String why) {
        return new Verification.Damaged(List.of(new Harm(part, why)));
    }

    private Verification judgeAgain(BundleRecord record, Optional<SignerKey> signer) throws IOException {
        boolean sameJudge = record.origin().judgeVersion() == JudgeVersion.NUMBER;
        ChainCheck chain = chain(record.passage());
        var judging = new JudgingAgain(record, chain);
        Again again;
        try (InputStream trace = zip.part(TraceCsv.PATH)) {
            again = judging.difference(trace).<Again>map(Again.Different::new).orElseGet(Again.Same::new);
        } catch (DamageException e) {
            if (sameJudge) {
                return damaged(e.part(), e.getMessage());
            }
            again = new Again.Impossible(e.part() + ": " + e.getMessage());
        }
        return new Verification.Judged(account(record, judging), JudgeVersion.NUMBER, again, signer);
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
