package org.ebbwatch.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.ebbwatch.evidence.json.JsonText;
import org.ebbwatch.passage.BackupSource;

/**
 * Copies a rack's records into one ZIP file while watching goes on. Keys and tokens are no part of it, for a backup travels to places
 * where they must not be. The file appears whole or not at all; one that is there is never overwritten.
 */
public final class Backup {
    static final String FORMAT = "ebbwatch backup";
    static final int VERSION = 1;
    static final String LIST = "backup.json";
    static final String DATABASE = "ebbwatch.mv.db";
    static final String READINGS = "readings.tail";

    private final BackupSource source;

    /** Of these records; each step of the source is called where it may be called. */
    public Backup(BackupSource source) {
        this.source = source;
    }

    /**
     * Makes a backup.
     *
     * @param file what it becomes
     * @param madeUtc RFC 3339, a label
     * @throws IOException if it cannot be made; then nothing of it is left
     */
    public void write(Path file, String madeUtc) throws IOException {
        if (Files.exists(file)) {
            throw new FileAlreadyExistsException(file + " is there already; name another file");
        }
        Path folder = file.toAbsolutePath().getParent();
        Files.createDirectories(folder);
        Path work = Files.createTempDirectory(folder, ".backup-");
        try {
            Path database = work.resolve("database.zip");
            Path readings = work.resolve(READINGS);
            source.holdReadings();
            source.copyDatabase(database);
            source.copyReadings(readings);
            Path whole = work.resolve("whole.zip");
            pack(database, readings, whole, madeUtc);
            Files.move(whole, file, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            remove(work);
        }
    }

    private static void pack(Path database, Path readings, Path whole, String madeUtc) throws IOException {
        List<Object> parts = new ArrayList<>();
        try (var zip = new ZipOutputStream(Files.newOutputStream(whole))) {
            try (var its = new ZipFile(database.toFile());
                    InputStream in = its.getInputStream(its.getEntry(DATABASE))) {
                parts.add(part(zip, DATABASE, in));
            }
            try (InputStream in = Files.newInputStream(readings)) {
                parts.add(part(zip, READINGS, in));
            }
            Map<String, Object> list = new LinkedHashMap<>();
            list.put("format", FORMAT);
            list.put("formatVersion", VERSION);
            list.put("madeUtc", madeUtc);
            list.put("digest", "SHA-256");
            list.put("parts", parts);
            zip.putNextEntry(new ZipEntry(LIST));
            zip.write(JsonText.of(list));
        }
    }

    private static Map<String, Object> part(ZipOutputStream zip, String name, InputStream in) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        MessageDigest digest = sha256();
        long bytes = in.transferTo(new DigestOutputStream(zip, digest));
        zip.closeEntry();
        Map<String, Object> part = new LinkedHashMap<>();
        part.put("path", name);
        part.put("bytes", bytes);
        part.put("sha256", HexFormat.of().formatHex(digest.digest()));
        return part;
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static void remove(Path work) throws IOException {
        List<Path> files;
        try (var all = Files.list(work)) {
            files = all.toList();
        }
        for (Path file : files) {
            Files.delete(file);
        }
        Files.delete(work);
    }
}
