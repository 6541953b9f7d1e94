package org.ebbwatch.web.ask;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Reads one JSON object (RFC 8259) of texts, numbers and truth values; anything after it, and a field given twice, is refused. */
final class FlatJson {
    /** Stands for an object or a list, which no field takes. */
    static final Object NESTED = new Object() {
        @Override
        public String toString() {
            return "an object or a list";
        }
    };

    /** No request but a photo has more to say. */
    private static final int MOST_CHARACTERS = 65_536;

    private static final JsonFactory JSON = JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private FlatJson() {}

    /** The fields in their order; null as null. */
    static Map<String, Object> read(String text) {
        if (text.length() > MOST_CHARACTERS) {
            throw new ProblemException(ProblemKind.TOO_LARGE, "The body has " + text.length() + " characters.");
        }
        try (JsonParser parser = JSON.createParser(text)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw malformed("The body is no JSON object.");
            }
            Map<String, Object> fields = new LinkedHashMap<>();
            while (parser.nextToken() != JsonToken.END_OBJECT) {
                String name = parser.currentName();
                parser.nextToken();
                fields.put(name, value(parser));
            }
            if (parser.nextToken() != null) {
                throw malformed("Something follows the JSON object.");
            }
            return fields;
        } catch (JsonParseException e) {
            throw malformed("The body is no JSON: line " + e.getLocation().getLineNr() + ", column "
                    + e.getLocation().getColumnNr() + ": " + firstLine(e.getOriginalMessage()) + '.');
        } catch (IOException e) {
            throw malformed("The body ends too early.");
        }
    }

    private static Object value(JsonParser parser) throws IOException {
        return switch (parser.currentToken()) {
            case VALUE_STRING -> parser.getText();
            case VALUE_NUMBER_INT -> parser.getBigIntegerValue();
            case VALUE_NUMBER_FLOAT -> parser.getDoubleValue();
            case VALUE_TRUE -> true;
            case VALUE_FALSE -> false;
            case VALUE_NULL -> null;
            default -> {
                parser.skipChildren();
                yield NESTED;
            }
        };
    }

    private static String firstLine(String message) {
        return message.lines().findFirst().orElse("");
    }

    private static ProblemException malformed(String detail) {
        return new ProblemException(ProblemKind.MALFORMED_BODY, detail);
    }
}
