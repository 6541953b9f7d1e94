package org.ebbwatch.alarm.outlet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;

/** Whom to believe about who a server is: certificates of a file in place of those that come with Java. */
public final class TrustedCertificates {
    private final TrustManagerFactory trust;

    private TrustedCertificates(TrustManagerFactory trust) {
        this.trust = trust;
    }

    /**
     * Reads the certificates of a PEM file: a private authority's, or a server's own.
     *
     * @throws IllegalArgumentException if it cannot be read or holds none
     */
    public static TrustedCertificates read(Path pem) {
        try (InputStream in = Files.newInputStream(pem)) {
            KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
            store.load(null, null);
            for (Certificate each : CertificateFactory.getInstance("X.509").generateCertificates(in)) {
                store.setCertificateEntry("certificate " + store.size(), each);
            }
            if (store.size() == 0) {
                throw new IllegalArgumentException("the file " + pem + " holds no certificate");
            }
            var trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            trust.init(store);
            return new TrustedCertificates(trust);
        } catch (IOException | GeneralSecurityException e) {
            throw new IllegalArgumentException(
                    "the certificates of " + pem + " cannot be read: "
                            + e.getClass().getSimpleName(),
                    e);
        }
    }

    /** For libraries that make their own connections. */
    public TrustManagerFactory factory() {
        return trust;
    }

    /** Connections that believe these certificates and no others. */
    public SSLContext context() {
        try {
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(null, trust.getTrustManagers(), null);
            return context;
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform has TLS", e);
        }
    }
}
