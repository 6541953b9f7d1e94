package org.ebbwatch.evidence;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.ebbwatch.evidence.container.Part;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.evidence.json.JsonText;
import org.ebbwatch.trace.codec.Sha256;

/**
 * The list of a bundle's parts with length and SHA-256 of each, itself and the signature over it excepted. Its text follows from what it says, so a
 * manifest whose text is another was changed.
 *
 * @param passage whose bundle it is
 * @param parts in the order they lie in the container
 */
record Manifest(UUID passage, List<Part> parts) {
    static final String PATH = "manifest.json";
    static final int BYTES_MOST = 1 << 16;

    private static final String FORMAT = "ebbwatch manifest";
    private static final int VERSION = 1;

    byte[] text() {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("format", FORMAT);
        map.put("formatVersion", VERSION);
        map.put("passage", passage.toString());
        map.put("digest", "SHA-256");
        List<Object> lines = new ArrayList<>();
        for (Part part : parts) {
            Map<String, Object> line = new LinkedHashMap<>();
            line.put("path", part.path());
            line.put("bytes", part.bytes());
            line.put("sha256", part.sha256().toString());
            lines.add(line);
        }
        map.put("parts", lines);
        return JsonText.of(map);
    }

    /**
     * Reads what {@link #text} wrote.
     *
     * @throws IllegalArgumentException if it is no manifest
     */
    static Manifest read(byte[] text) {
        JsonObject json = JsonObject.read(text);
        if (!json.text("format").equals(FORMAT) || json.number("formatVersion") != VERSION) {
            throw new IllegalArgumentException("it is no manifest of version " + VERSION);
        }
        List<Part> parts = new ArrayList<>();
        for (JsonObject line : json.objects("parts")) {
            byte[] digest = HexFormat.of().parseHex(line.text("sha256"));
            parts.add(new Part(line.text("path"), line.number("bytes"), Sha256.wrap(digest)));
        }
        return new Manifest(UUID.fromString(json.text("passage")), List.copyOf(parts));
    }
}
