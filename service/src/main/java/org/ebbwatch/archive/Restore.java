package org.ebbwatch.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.ebbwatch.evidence.json.JsonObject;

/** Puts a backup's records where a service can use them. */
public final class Restore {
    private static final Set<String> PARTS = Set.of(Backup.DATABASE, Backup.READINGS);

    private static final String UNFINISHED = ".part";

    private Restore() {}

    /**
     * Restores a backup into a folder that is missing or empty.
     *
     * @return when the backup was made, RFC 3339
     * @throws IOException if the folder holds anything, or the file is no intact backup; then the folder is left without records
     */
    public static String into(Path backup, Path folder) throws IOException {
        requireEmpty(folder);
        Files.createDirectories(folder);
        List<Path> unfinished = new ArrayList<>();
        try (var zip = new ZipFile(backup.toFile())) {
            JsonObject list = list(backup, zip);
            for (JsonObject part : list.objects("parts")) {
                String name = part.text("path");
                if (!PARTS.contains(name)) {
                    throw new IOException("a backup should not hold " + name);
                }
                Path file = folder.resolve(name + UNFINISHED);
                unfinished.add(file);
                unpack(zip, name, part.text("sha256"), file);
            }
            if (unfinished.size() != PARTS.size()) {
                throw new IOException(backup + " lacks a part");
            }
            for (Path file : unfinished) {
                String name = file.getFileName().toString();
                Files.move(
                        file,
                        folder.resolve(name.substring(0, name.length() - UNFINISHED.length())),
                        StandardCopyOption.ATOMIC_MOVE);
            }
            return list.text("madeUtc");
        } catch (IllegalArgumentException e) {
            throw new IOException(backup + " is no backup: " + e.getMessage(), e);
        } finally {
            for (Path file : unfinished) {
                Files.deleteIfExists(file);
            }
        }
    }

    private static void requireEmpty(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (var files = Files.list(folder)) {
            if (files.findAny().isPresent()) {
                throw new IOException(
                        folder + " is not empty; a backup is restored into a new folder, never over records");
            }
        }
    }

    private static JsonObject list(Path backup, ZipFile zip) throws IOException {
        ZipEntry entry = zip.getEntry(Backup.LIST);
        if (entry == null) {
            throw new IOException(backup + " is no backup: it holds no " + Backup.LIST);
        }
        try (InputStream in = zip.getInputStream(entry)) {
            JsonObject list = JsonObject.read(in.readAllBytes());
            if (!list.text("format").equals(Backup.FORMAT) || list.number("formatVersion") != Backup.VERSION) {
                throw new IOException(backup + " is no backup of version " + Backup.VERSION);
            }
            return list;
        }
    }

    private static void unpack(ZipFile zip, String name, String sha256, Path file) throws IOException {
        ZipEntry entry = zip.getEntry(name);
        if (entry == null) {
            throw new IOException("the backup lacks " + name);
        }
        MessageDigest digest = Backup.sha256();
        try (InputStream in = new DigestInputStream(zip.getInputStream(entry), digest)) {
            Files.copy(in, file);
        }
        if (!HexFormat.of().formatHex(digest.digest()).equals(sha256)) {
            throw new IOException("the backup is damaged: " + name + " does not fit its SHA-256");
        }
    }
}
