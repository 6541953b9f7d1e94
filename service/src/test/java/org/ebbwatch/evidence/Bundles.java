package org.ebbwatch.evidence;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.ebbwatch.evidence.container.Forged;
import org.ebbwatch.evidence.container.SealedZipReader;
import org.ebbwatch.evidence.container.SealedZipWriter;
import org.ebbwatch.evidence.signature.SigningKey;

/** Bundles taken apart and put together again in another way. */
final class Bundles {
    /** One for all tests, so that the same passage gives the same bundle. */
    static final SigningKey KEY = SigningKey.fresh();

    private Bundles() {}

    static Path write(InventedPassage passage, Path folder) throws IOException {
        return write(passage, Origin.current(), folder);
    }

    static Path write(InventedPassage passage, Origin origin, Path folder) throws IOException {
        return new BundleWriter(origin, KEY).write(passage.records(), folder).file();
    }

    static Map<String, byte[]> parts(Path bundle) throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (SealedZipReader zip = SealedZipReader.open(bundle)) {
            for (String path : zip.paths()) {
                try (var in = zip.part(path)) {
                    parts.put(path, in.readAllBytes());
                }
            }
        }
        return parts;
    }

    static String text(Path bundle, String part) throws IOException {
        return new String(parts(bundle).get(part), StandardCharsets.UTF_8);
    }

    /** Puts these parts into a container whose seal fits, whatever the manifest says. */
    static Path put(Map<String, byte[]> parts, Path file) throws IOException {
        var container = new Forged();
        parts.forEach(container::part);
        return Forged.over(file, container.sealed());
    }

    /** Puts these parts into a container with a manifest and a signature that fit them: what whoever has the key could do. */
    static Path putWithManifest(Map<String, byte[]> parts, Path file) throws IOException {
        return putSigned(parts, KEY, file);
    }

    /** The same, signed by another key: what anybody could do. */
    static Path putSigned(Map<String, byte[]> parts, SigningKey key, Path file) throws IOException {
        Map<String, byte[]> all = new LinkedHashMap<>(parts);
        all.remove(Manifest.PATH);
        all.remove(SignaturePart.PATH);
        try (SealedZipWriter zip = SealedZipWriter.create(file)) {
            for (Map.Entry<String, byte[]> part : all.entrySet()) {
                try (OutputStream out = zip.part(part.getKey())) {
                    out.write(part.getValue());
                }
            }
            byte[] manifest = new Manifest(InventedPassage.ID, zip.parts()).text();
            try (OutputStream out = zip.part(Manifest.PATH)) {
                out.write(manifest);
            }
            try (OutputStream out = zip.part(SignaturePart.PATH)) {
                out.write(SignaturePart.of(manifest, key).text());
            }
            zip.seal();
        }
        return file;
    }

    /** A bundle whose record or trace was edited, with everything else made to fit. */
    static Path edited(Path bundle, String part, String old, String other) throws IOException {
        Map<String, byte[]> parts = parts(bundle);
        String text = new String(parts.get(part), StandardCharsets.UTF_8);
        if (!text.contains(old)) {
            throw new IllegalArgumentException(part + " does not hold " + old);
        }
        parts.put(part, text.replace(old, other).getBytes(StandardCharsets.UTF_8));
        Path folder = Files.createDirectories(bundle.resolveSibling("edited"));
        return putWithManifest(parts, folder.resolve(bundle.getFileName()));
    }
}
