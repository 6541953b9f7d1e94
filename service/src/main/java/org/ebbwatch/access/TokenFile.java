package org.ebbwatch.access;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;

/**
 * The operator's token: 256 random bits, shown once to whoever made it and kept as its SHA-256 in the folder of the records. So much
 * chance needs no slow hash. The file is read for every request, so that another process can revoke a token by making a new one.
 * Thread-safe.
 */
public final class TokenFile {
    /** Its name in the folder of the records. */
    public static final String NAME = "operator-token.sha256";

    private static final int TOKEN_BYTES = 32;
    private static final int MARK_BYTES = 8;
    private static final int LONGEST_TOKEN = 200;

    private final Path folder;
    private final Path file;

    /** The token of the records in this folder. */
    public TokenFile(Path folder) {
        this.folder = folder;
        this.file = folder.resolve(NAME);
    }

    /**
     * Makes a token where there is none yet.
     *
     * @return the token, to be shown once; empty where there is one already
     * @throws IOException if it cannot be kept
     */
    public Optional<String> begin() throws IOException {
        return Files.exists(file) ? Optional.empty() : Optional.of(renew());
    }

    /**
     * Makes a token; from now on no other is believed.
     *
     * @return the token, to be shown once
     * @throws IOException if it cannot be kept; then the one before still holds
     */
    public String renew() throws IOException {
        byte[] random = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(random);
        String token = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
        Path fresh = Files.createTempFile(folder, NAME, ".new");
        try {
            OwnersFile.keepToOwner(fresh);
            Files.writeString(fresh, Hash.hex(token) + '\n', StandardCharsets.US_ASCII);
            Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(fresh);
        }
        return token;
    }

    /** Whether this is the token. Takes the same time however much of it is right. */
    public boolean admits(String token) {
        return token.length() <= LONGEST_TOKEN
                && kept().filter(hash -> MessageDigest.isEqual(hash, Hash.of(token)))
                        .isPresent();
    }

    Path folder() {
        return folder;
    }

    /** Tells one token from the next without telling either; empty where nobody is let in. */
    String mark() {
        return kept().map(hash -> HexFormat.of().formatHex(hash, 0, MARK_BYTES)).orElse("");
    }

    /** What is kept; empty where nothing usable is, so that nobody is let in. */
    private Optional<byte[]> kept() {
        try {
            byte[] hash = HexFormat.of()
                    .parseHex(Files.readString(file, StandardCharsets.US_ASCII).strip());
            return Optional.of(hash).filter(it -> it.length == TOKEN_BYTES);
        } catch (IOException | IllegalArgumentException unusable) {
            return Optional.empty();
        }
    }
}
