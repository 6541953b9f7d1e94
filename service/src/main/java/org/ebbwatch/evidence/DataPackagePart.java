package org.ebbwatch.evidence;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.evidence.container.Part;
import org.ebbwatch.evidence.json.JsonText;
import org.ebbwatch.passage.PassageCard;

/**
 * The part {@code datapackage.json}: what the other parts are, in the words of the Frictionless Data Package (version 1 of its
 * profile), for programs that know nothing of bundles.
 */
final class DataPackagePart {
    static final String PATH = "datapackage.json";

    private static final Map<String, String> TITLES = Map.of(
            TraceCsv.PATH, "Every reading, a line each",
            RecordWriter.PATH, "Everything else: cell, procedure, journal, findings, results",
            ChainPart.PATH, "Links of the sealed segments the readings come from",
            ReportPart.PATH, "The report for a person");
    private static final Map<String, String> MEDIA_TYPES =
            Map.of("csv", "text/csv", "json", "application/json", "pdf", "application/pdf");

    private DataPackagePart() {}

    /** Of these parts, which are complete. */
    static byte[] of(PassageCard card, String createdUtc, List<Part> parts) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("profile", "data-package");
        map.put("name", "passage-" + card.id());
        map.put("id", card.id().toString());
        map.put("title", "Record of one cell emptied through a resistor and tested");
        map.put("created", createdUtc);
        boolean inString = card.cell().string().isPresent();
        map.put(
                "resources",
                parts.stream().map(part -> resource(part, inString)).toList());
        return JsonText.of(map);
    }

    private static Map<String, Object> resource(Part part, boolean inString) {
        String format = part.path().substring(part.path().lastIndexOf('.') + 1);
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("name", part.path().substring(0, part.path().lastIndexOf('.')));
        map.put("path", part.path());
        map.put("title", TITLES.get(part.path()));
        map.put("format", format);
        map.put("mediatype", MEDIA_TYPES.get(format));
        if (!format.equals("pdf")) {
            map.put("encoding", "utf-8");
        }
        map.put("bytes", part.bytes());
        map.put("hash", "sha256:" + part.sha256());
        if (part.path().equals(TraceCsv.PATH)) {
            map.put("profile", "tabular-data-resource");
            Map<String, Object> dialect = new LinkedHashMap<>();
            dialect.put("delimiter", ",");
            dialect.put("lineTerminator", TraceCsv.LINE_END);
            dialect.put("doubleQuote", true);
            dialect.put("header", true);
            map.put("dialect", dialect);
            map.put("schema", schema(inString));
        }
        return map;
    }

    private static Map<String, Object> schema(boolean inString) {
        List<Object> fields = new ArrayList<>();
        for (TraceCsv.Column column : TraceCsv.columns(inString)) {
            Map<String, Object> field = new LinkedHashMap<>();
            field.put("name", column.name());
            field.put("type", column.type());
            if (column.type().equals("datetime")) {
                field.put("format", "any");
            }
            if (!column.unit().isEmpty()) {
                field.put("unit", column.unit());
            }
            field.put("description", column.meaning());
            fields.add(field);
        }
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("fields", fields);
        schema.put("missingValues", List.of(""));
        schema.put("primaryKey", "sequence");
        return schema;
    }
}
