package org.ebbwatch.evidence;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.evidence.json.JsonText;
import org.ebbwatch.passage.PassageChain;
import org.ebbwatch.passage.PassageChain.Link;
import org.ebbwatch.passage.PassageChain.Stay;
import org.ebbwatch.trace.codec.Sha256;

/**
 * The part {@code chain.json}: the links of the sealed segments from which the trace was read, as they were stored when the bundle
 * was made.
 */
final class ChainPart {
    static final String PATH = "chain.json";
    static final int BYTES_MOST = 64 << 20;

    private static final String FORMAT = "ebbwatch chain";
    private static final int VERSION = 1;

    private ChainPart() {}

    static byte[] text(UUID passage, PassageChain chain) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("format", FORMAT);
        map.put("formatVersion", VERSION);
        map.put("passage", passage.toString());
        map.put("digest", "SHA-256");
        map.put("stays", chain.stays().stream().map(ChainPart::stay).toList());
        return JsonText.of(map);
    }

    private static Map<String, Object> stay(Stay stay) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("board", stay.board());
        map.put("channel", stay.channel());
        map.put("fromEventMillis", stay.fromMillis());
        map.put("toEventMillis", stay.toMillis());
        map.put("links", stay.links().stream().map(ChainPart::link).toList());
        return map;
    }

    private static Map<String, Object> link(Link link) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("bootNumber", link.bootNumber());
        map.put("firstScan", link.firstScan());
        map.put("firstEventMillis", link.firstEventMillis());
        map.put("lastEventMillis", link.lastEventMillis());
        map.put("samples", link.samples());
        map.put("previous", link.previous().toString());
        map.put("sha256", link.sha256().toString());
        return map;
    }

    /**
     * Reads what {@link #text} wrote.
     *
     * @throws IllegalArgumentException if it is no chain, or that of another passage
     */
    static PassageChain read(byte[] text, UUID passage) {
        JsonObject json = JsonObject.read(text);
        if (!json.text("format").equals(FORMAT) || json.number("formatVersion") != VERSION) {
            throw new IllegalArgumentException("it is no chain of version " + VERSION);
        }
        if (!json.text("passage").equals(passage.toString())) {
            throw new IllegalArgumentException("it is the chain of another passage");
        }
        List<Stay> stays = new ArrayList<>();
        for (JsonObject stay : json.objects("stays")) {
            stays.add(new Stay(
                    stay.text("board"),
                    (int) stay.number("channel"),
                    stay.number("fromEventMillis"),
                    stay.number("toEventMillis"),
                    stay.objects("links").stream().map(ChainPart::link).toList()));
        }
        return new PassageChain(List.copyOf(stays));
    }

    private static Link link(JsonObject link) {
        return new Link(
                link.number("bootNumber"),
                link.number("firstScan"),
                link.number("firstEventMillis"),
                link.number("lastEventMillis"),
                (int) link.number("samples"),
                digest(link.text("previous")),
                digest(link.text("sha256")));
    }

    private static Sha256 digest(String hex) {
        return Sha256.wrap(HexFormat.of().parseHex(hex));
    }
}
