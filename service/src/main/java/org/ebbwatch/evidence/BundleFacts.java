package org.ebbwatch.evidence;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.evidence.container.SealedZipReader;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.evidence.signature.SignerKey;

/**
 * What an intact bundle says of itself.
 *
 * @param file the bundle
 * @param record its {@code record.json}
 * @param manifestSha256 digest of its manifest, 64 hexadecimal digits: names this very bundle, and no other of the same passage
 * @param signer empty in bundles of format 1
 */
public record BundleFacts(
        Path file, UUID passage, JsonObject record, String manifestSha256, Optional<SignerKey> signer) {
    private static final int RECORD_MOST = 64 << 20;

    /**
     * Reads a bundle's facts; does not judge it again.
     *
     * @throws IOException if the file cannot be read or is no intact bundle, with the reason
     */
    public static BundleFacts read(Path file) throws IOException {
        try (SealedZipReader zip = SealedZipReader.open(file)) {
            PartsCheck check = PartsCheck.of(zip);
            if (!check.harms().isEmpty()) {
                throw new IOException(file.getFileName() + " is damaged: "
                        + check.harms().get(0).part() + ": "
                        + check.harms().get(0).why());
            }
            return new BundleFacts(
                    file,
                    check.passage().orElseThrow(),
                    JsonObject.read(PartsCheck.whole(zip, RecordWriter.PATH, RECORD_MOST)),
                    zip.digest(Manifest.PATH).sha256().toString(),
                    check.signer());
        }
    }
}
