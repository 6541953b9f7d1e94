package org.ebbwatch.paper;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The one typeface of a document, embedded with the glyphs that are used: Liberation Sans (SIL Open Font License 1.1), which comes
 * with the PDF library. What it has no glyph for is set as a box.
 */
final class Lettering {
    private static final String TYPEFACE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    private static final int BOX = '\u25A1';
    private static final float UNITS = 1000;

    private final PDFont font;
    private final Set<Integer> known = new HashSet<>();

    Lettering(PDDocument document) throws IOException {
        try (InputStream typeface = PDDocument.class.getResourceAsStream(TYPEFACE)) {
            font = PDType0Font.load(document, typeface, true);
        }
    }

    PDFont font() {
        return font;
    }

    /** The same text in characters that can be set; whatever breaks a line or moves a cursor is a space. */
    String settable(String text) {
        var settable = new StringBuilder();
        text.codePoints().forEach(point -> {
            int type = Character.getType(point);
            if (Character.isWhitespace(point) || type == Character.CONTROL || type == Character.FORMAT) {
                settable.append(' ');
            } else {
                settable.appendCodePoint(has(point) ? point : BOX);
            }
        });
        return settable.toString();
    }

    private boolean has(int point) {
        if (known.contains(point)) {
            return true;
        }
        try {
            font.encode(Character.toString(point));
            return known.add(point);
        } catch (IOException | IllegalArgumentException noGlyph) {
            return false;
        }
    }

    /** Width of a settable text in points. */
    float width(String settable, float size) throws IOException {
        return font.getStringWidth(settable) / UNITS * size;
    }

    /** Breaks a text into lines no wider than {@code width} points; a word that is wider is broken within. */
    List<String> lines(String text, float size, float width) throws IOException {
        List<String> lines = new ArrayList<>();
        var line = new StringBuilder();
        for (String word : settable(text).split(" +", -1)) {
            String rest = word;
            String with = line.isEmpty() ? rest : line + " " + rest;
            if (width(with, size) <= width) {
                line.setLength(0);
                line.append(with);
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (width(rest, size) > width) {
                int fits = fitting(rest, size, width);
                lines.add(rest.substring(0, fits));
                rest = rest.substring(fits);
            }
            line.append(rest);
        }
        lines.add(line.toString());
        return lines;
    }

    private int fitting(String word, float size, float width) throws IOException {
        int fits = 1;
        while (fits < word.length() && width(word.substring(0, fits + 1), size) <= width) {
            fits++;
        }
        return fits;
    }
}
