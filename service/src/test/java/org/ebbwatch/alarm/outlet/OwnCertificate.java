package org.ebbwatch.alarm.outlet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.List;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;

/**
 * A certificate that nobody signed but itself, made by the JDK's keytool.
 *
 * @param pem the certificate, to be believed
 * @param server what a server needs to show it
 */
public record OwnCertificate(Path pem, SSLContext server) {
    private static final String PASSWORD = "changeit";

    /** One for that host, valid for a month. */
    public static OwnCertificate of(String host, Path folder) throws IOException, InterruptedException {
        Path store = folder.resolve(host + ".p12");
        Path pem = folder.resolve(host + ".pem");
        keytool(
                store,
                "-genkeypair",
                "-keyalg",
                "EC",
                "-validity",
                "30",
                "-dname",
                "CN=" + host,
                "-ext",
                "san=dns:" + host);
        keytool(store, "-exportcert", "-rfc", "-file", pem.toString());
        return new OwnCertificate(pem, context(store));
    }

    private static void keytool(Path store, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "keytool").toString());
        command.addAll(List.of(arguments));
        command.addAll(List.of("-alias", "own", "-storetype", "PKCS12", "-storepass", PASSWORD));
        command.addAll(List.of("-keystore", store.toString()));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IOException(said);
        }
    }

    private static SSLContext context(Path store) throws IOException {
        try (InputStream in = Files.newInputStream(store)) {
            KeyStore keys = KeyStore.getInstance("PKCS12");
            keys.load(in, PASSWORD.toCharArray());
            var factory = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
            factory.init(keys, PASSWORD.toCharArray());
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(factory.getKeyManagers(), null, null);
            return context;
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }
}
