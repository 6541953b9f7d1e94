package org.ebbwatch.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.evidence.Verification.Harm;
import org.ebbwatch.evidence.container.DamageException;
import org.ebbwatch.evidence.container.Part;
import org.ebbwatch.evidence.container.SealedZipReader;
import org.ebbwatch.evidence.signature.SignerKey;

/**
 * Whether a bundle is what was sealed: every part against the manifest, the manifest against the signature, every byte against the
 * seal. Notes all harm it finds, one for each part.
 */
final class PartsCheck {
    private static final List<String> IN_EVERY_FORMAT = List.of(TraceCsv.PATH, RecordWriter.PATH, Manifest.PATH);
    private static final List<String> SINCE_FORMAT_2 =
            List.of(ChainPart.PATH, ReportPart.PATH, DataPackagePart.PATH, SignaturePart.PATH);

    private final SealedZipReader zip;
    private final List<Harm> harms = new ArrayList<>();
    private Optional<UUID> passage = Optional.empty();
    private Optional<SignerKey> signer = Optional.empty();

    private PartsCheck(SealedZipReader zip) {
        this.zip = zip;
    }

    static PartsCheck of(SealedZipReader zip) throws IOException {
        var check = new PartsCheck(zip);
        check.parts();
        try {
            zip.checkSeal();
        } catch (DamageException e) {
            check.harm(e.part(), e.getMessage());
        }
        return check;
    }

    /** Empty: the bundle is intact. */
    List<Harm> harms() {
        return List.copyOf(harms);
    }

    /** Whose manifest it is; there where the bundle is intact. */
    Optional<UUID> passage() {
        return passage;
    }

    /** Who signed the manifest; empty in bundles of format 1, which had no signature. */
    Optional<SignerKey> signer() {
        return signer;
    }

    private boolean isSigned() {
        return zip.version() > 1;
    }

    private void parts() throws IOException {
        IN_EVERY_FORMAT.forEach(this::require);
        if (isSigned()) {
            SINCE_FORMAT_2.forEach(this::require);
        }
        List<Part> found = new ArrayList<>();
        for (String path : zip.paths()) {
            if (!path.equals(Manifest.PATH) && !(isSigned() && path.equals(SignaturePart.PATH))) {
                try {
                    found.add(zip.digest(path));
                } catch (DamageException e) {
                    harm(path, e.getMessage());
                }
            }
        }
        if (zip.paths().contains(Manifest.PATH)) {
            manifest(found);
        }
    }

    private void require(String path) {
        if (!zip.paths().contains(path)) {
            harm(path, "it is missing");
        }
    }

    private void manifest(List<Part> found) throws IOException {
        try {
            byte[] text = whole(zip, Manifest.PATH, Manifest.BYTES_MOST);
            Manifest manifest = Manifest.read(text);
            found.forEach(part -> hold(part, manifest));
            manifest.parts().forEach(part -> require(part.path()));
            if (harms.isEmpty() && !Arrays.equals(text, new Manifest(manifest.passage(), found).text())) {
                harm(Manifest.PATH, "it is not written as the manifest of these parts is");
            }
            passage = Optional.of(manifest.passage());
            if (isSigned() && zip.paths().contains(SignaturePart.PATH)) {
                signature(text);
            }
        } catch (DamageException e) {
            harm(e.part(), e.getMessage());
        } catch (IllegalArgumentException e) {
            harm(Manifest.PATH, e.getMessage());
        }
    }

    private void signature(byte[] manifest) throws IOException {
        try {
            byte[] text = whole(zip, SignaturePart.PATH, SignaturePart.BYTES_MOST);
            SignaturePart signature = SignaturePart.read(text);
            if (!Arrays.equals(text, signature.text()) || !isLast(SignaturePart.PATH)) {
                harm(SignaturePart.PATH, "it is not written, or does not lie, as a signature does");
            } else if (!signature.fits(manifest)) {
                harm(SignaturePart.PATH, "it is no signature of this manifest by the key it names");
            } else {
                signer = Optional.of(signature.signer());
            }
        } catch (IllegalArgumentException e) {
            harm(SignaturePart.PATH, e.getMessage());
        }
    }

    private boolean isLast(String path) {
        String last = "";
        for (String each : zip.paths()) {
            last = each;
        }
        return last.equals(path);
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

    /** A part as a whole; one that is longer than that is refused. */
    static byte[] whole(SealedZipReader zip, String path, int most) throws IOException {
        if (zip.bytes(path) > most) {
            throw new DamageException(path, "it has more than the " + most + " bytes that one may have");
        }
        try (InputStream in = zip.part(path)) {
            return in.readAllBytes();
        }
    }
}
