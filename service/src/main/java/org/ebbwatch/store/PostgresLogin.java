package org.ebbwatch.store;

/**
 * Where a PostgreSQL database is, and as whom to use it.
 *
 * @param url of JDBC, such as {@code jdbc:postgresql://db.example/ebbwatch?sslmode=verify-full}
 * @param password never shown
 */
public record PostgresLogin(String url, String user, String password) {
    private static final String BEGINNING = "jdbc:postgresql:";

    public PostgresLogin {
        if (!isUrl(url)) {
            throw new IllegalArgumentException("the address of a PostgreSQL database begins with " + BEGINNING);
        }
    }

    /** Whether an address is one of PostgreSQL. */
    public static boolean isUrl(String url) {
        return url.startsWith(BEGINNING);
    }

    @Override
    public String toString() {
        return user + " at " + url;
    }
}
