package org.ebbwatch.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;

/** A file as a resource of a Data Package. */
final class ExportedFile {
    private ExportedFile() {}

    static Map<String, Object> resource(String name, Path file, String format, String mediaType) throws IOException {
        MessageDigest digest = Backup.sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        Map<String, Object> resource = new LinkedHashMap<>();
        resource.put("name", name);
        resource.put("path", file.getFileName().toString());
        resource.put("format", format);
        resource.put("mediatype", mediaType);
        resource.put("bytes", Files.size(file));
        resource.put("hash", "sha256:" + HexFormat.of().formatHex(digest.digest()));
        return resource;
    }
}
