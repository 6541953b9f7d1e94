package org.ebbwatch.access;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Browsers that have shown the operator's token. Each holds a key of 256 random bits of its own, which is kept here as its SHA-256 in
 * the folder of the records, so that whoever is woken at night after a power cut is still known. A session ends after
 * {@value #DAYS} days, when it is ended, when another token is made, and when {@value #MOST} younger ones have begun.
 *
 * <p>Thread-safe.
 */
public final class Sessions {
    /** How long a session lasts. */
    public static final int DAYS = 30;

    /** How many there are at most. */
    public static final int MOST = 64;

    /** Their name in the folder of the records. */
    public static final String NAME = "sessions";

    private static final long LIFE_MILLIS = DAYS * 86_400_000L;
    private static final int KEY_BYTES = 32;
    private static final int LONGEST_KEY = 100;

    private final TokenFile tokens;
    private final Path folder;
    private final Path file;
    /** By the hash of its key. */
    private final Map<String, Session> sessions = new LinkedHashMap<>();

    /** Its end, and the token that was shown for it. */
    private record Session(long untilMillis, String token) {}

    /** The sessions for which this token was shown, beside where it is kept; those that cannot be read have ended. */
    public Sessions(TokenFile tokens) {
        this.tokens = tokens;
        this.folder = tokens.folder();
        this.file = folder.resolve(NAME);
        for (String line : kept()) {
            String[] parts = line.split(" ", -1);
            if (parts.length == 3 && parts[1].matches("[0-9]{1,15}")) {
                sessions.put(parts[0], new Session(Long.parseLong(parts[1]), parts[2]));
            }
        }
    }

    private List<String> kept() {
        try {
            return Files.readAllLines(file, StandardCharsets.US_ASCII);
        } catch (IOException none) {
            return List.of();
        }
    }

    /**
     * Begins a session for whoever shows the token.
     *
     * @return its key; empty where this is not the token
     * @throws IOException if it cannot be kept; then there is none
     */
    public synchronized Optional<String> begin(String token, long nowMillis) throws IOException {
        if (!tokens.admits(token)) {
            return Optional.empty();
        }
        byte[] random = new byte[KEY_BYTES];
        new SecureRandom().nextBytes(random);
        String key = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
        Map<String, Session> before = new LinkedHashMap<>(sessions);
        sessions.values().removeIf(session -> !lives(session, nowMillis));
        while (sessions.size() >= MOST) {
            sessions.remove(sessions.keySet().iterator().next());
        }
        sessions.put(Hash.hex(key), new Session(nowMillis + LIFE_MILLIS, tokens.mark()));
        keepOr(before);
        return Optional.of(key);
    }

    /** When the session with this key ends; empty where there is none. */
    public synchronized Optional<Long> untilMillis(String key, long nowMillis) {
        return key.length() > LONGEST_KEY
                ? Optional.empty()
                : Optional.ofNullable(sessions.get(Hash.hex(key)))
                        .filter(session -> lives(session, nowMillis))
                        .map(Session::untilMillis);
    }

    /**
     * Ends a session.
     *
     * @throws IOException if that cannot be kept; then it goes on
     */
    public synchronized void end(String key) throws IOException {
        Map<String, Session> before = new LinkedHashMap<>(sessions);
        if (key.length() <= LONGEST_KEY && sessions.remove(Hash.hex(key)) != null) {
            keepOr(before);
        }
    }

    private boolean lives(Session session, long nowMillis) {
        return nowMillis < session.untilMillis && session.token.equals(tokens.mark());
    }

    private void keepOr(Map<String, Session> before) throws IOException {
        List<String> lines = new ArrayList<>();
        sessions.forEach((hash, session) -> lines.add(hash + ' ' + session.untilMillis + ' ' + session.token));
        try {
            Path fresh = Files.createTempFile(folder, NAME, ".new");
            try {
                OwnersFile.keepToOwner(fresh);
                Files.write(fresh, lines, StandardCharsets.US_ASCII);
                Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(fresh);
            }
        } catch (IOException e) {
            sessions.clear();
            sessions.putAll(before);
            throw e;
        }
    }
}
