package org.ebbwatch.evidence.signature;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermission;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Base64;
import java.util.EnumSet;
import java.util.List;

/**
 * The key by which a service signs its bundles, kept in the folder of its records for its owner alone (file mode 0600 where the file
 * system knows modes). The file holds two lines: the private key as PKCS #8 in base 64, and the public key as {@link SignerKey#hex}.
 */
public final class SigningKey {
    /** Its name in the folder of the records. */
    public static final String NAME = "signing-key";

    private final PrivateKey secret;
    private final SignerKey signer;

    private SigningKey(PrivateKey secret, SignerKey signer) {
        this.secret = secret;
        this.signer = signer;
    }

    /** A key nobody has yet. */
    public static SigningKey fresh() {
        try {
            KeyPair pair = KeyPairGenerator.getInstance(SignerKey.ALGORITHM).generateKeyPair();
            return new SigningKey(pair.getPrivate(), SignerKey.of(pair.getPublic()));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform since 15 has Ed25519", e);
        }
    }

    /**
     * The key of the records in this folder, made where there is none.
     *
     * @throws IOException if it can be neither read nor made, or is damaged
     */
    public static SigningKey of(Path folder) throws IOException {
        Path file = folder.resolve(NAME);
        if (!Files.exists(file)) {
            fresh().keep(folder, file);
        }
        return read(file);
    }

    private static SigningKey read(Path file) throws IOException {
        try {
            List<String> lines = Files.readAllLines(file, StandardCharsets.US_ASCII);
            byte[] encoded = Base64.getDecoder().decode(lines.get(0));
            PrivateKey secret =
                    KeyFactory.getInstance(SignerKey.ALGORITHM).generatePrivate(new PKCS8EncodedKeySpec(encoded));
            var key = new SigningKey(secret, new SignerKey(lines.get(1)));
            byte[] proof = {1};
            if (key.signer.signed(proof, key.sign(proof))) {
                return key;
            }
        } catch (GeneralSecurityException | IllegalArgumentException | IndexOutOfBoundsException damaged) {
            // As told below.
        }
        throw new IOException(
                "the signing key " + file + " is damaged; put it back from where you keep a copy, or move it away:"
                        + " then another one is made, which receivers must be told");
    }

    private void keep(Path folder, Path file) throws IOException {
        Path fresh = Files.createTempFile(folder, NAME, ".new");
        try {
            keepToOwner(fresh);
            String lines = Base64.getEncoder().encodeToString(secret.getEncoded()) + '\n' + signer.hex() + '\n';
            Files.writeString(fresh, lines, StandardCharsets.US_ASCII);
            Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }

    private static void keepToOwner(Path path) throws IOException {
        try {
            Files.setPosixFilePermissions(
                    path, EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE));
        } catch (UnsupportedOperationException notHere) {
            // A file system without permissions of this kind; the folder has to keep others out.
        }
    }

    /** The public half. */
    public SignerKey signer() {
        return signer;
    }

    /** The 64 bytes of a signature; the same message always gets the same (RFC 8032). */
    public byte[] sign(byte[] message) {
        try {
            Signature signing = Signature.getInstance(SignerKey.ALGORITHM);
            signing.initSign(secret);
            signing.update(message);
            return signing.sign();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("a key that was read can sign", e);
        }
    }
}
