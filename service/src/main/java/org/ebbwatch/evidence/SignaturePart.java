package org.ebbwatch.evidence;

import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.evidence.json.JsonText;
import org.ebbwatch.evidence.signature.SignerKey;
import org.ebbwatch.evidence.signature.SigningKey;

/**
 * The part {@code signature.json}: who signed the manifest, and so every part it lists.
 *
 * @param signature in 128 lower-case hexadecimal digits
 */
record SignaturePart(SignerKey signer, String signature) {
    static final String PATH = "signature.json";
    static final int BYTES_MOST = 1 << 12;

    private static final String FORMAT = "ebbwatch signature";
    private static final int VERSION = 1;

    static SignaturePart of(byte[] manifest, SigningKey key) {
        return new SignaturePart(key.signer(), HexFormat.of().formatHex(key.sign(manifest)));
    }

    byte[] text() {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("format", FORMAT);
        map.put("formatVersion", VERSION);
        map.put("algorithm", "Ed25519");
        map.put("of", Manifest.PATH);
        map.put("publicKey", signer.hex());
        map.put("signature", signature);
        return JsonText.of(map);
    }

    /**
     * Reads what {@link #text} wrote.
     *
     * @throws IllegalArgumentException if it is no signature
     */
    static SignaturePart read(byte[] text) {
        JsonObject json = JsonObject.read(text);
        if (!json.text("format").equals(FORMAT) || json.number("formatVersion") != VERSION) {
            throw new IllegalArgumentException("it is no signature of version " + VERSION);
        }
        return new SignaturePart(new SignerKey(json.text("publicKey")), json.text("signature"));
    }

    /** Whether this is the signer's own signature of that manifest. */
    boolean fits(byte[] manifest) {
        try {
            return signer.signed(manifest, HexFormat.of().parseHex(signature));
        } catch (IllegalArgumentException noHexadecimals) {
            return false;
        }
    }
}
