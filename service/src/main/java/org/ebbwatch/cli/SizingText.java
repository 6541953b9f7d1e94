package org.ebbwatch.cli;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.sizing.Refusal;
import org.ebbwatch.sizing.SizingAnswer;
import org.ebbwatch.sizing.SizingAnswer.Explained;
import org.ebbwatch.sizing.SizingAnswer.Refused;
import org.ebbwatch.sizing.SizingAnswer.Sized;

/** A load, or why there is none, as lines of a terminal. */
final class SizingText {
    private static final int WIDTH = 100;
    private static final int NAME = 10;
    private static final int VALUE = 18;
    private static final String MARK = "- ";

    private SizingText() {}

    static List<String> lines(SizingAnswer answer) {
        List<String> lines = new ArrayList<>();
        if (answer instanceof Sized sized) {
            sized.explained().forEach(line -> explained(line, lines));
            lines.add("");
            lines.add("Mind this:");
            sized.cautions().forEach(caution -> listed(caution, lines));
        } else {
            lines.add("No load is named for this:");
            for (Refusal reason : ((Refused) answer).reasons()) {
                listed(reason.why() + ' ' + reason.instead(), lines);
            }
        }
        return lines;
    }

    private static void explained(Explained line, List<String> lines) {
        String name = pad(line.name(), NAME);
        if (line.value().length() < VALUE) {
            wrapped(name + pad(line.value(), VALUE), line.why(), lines);
        } else {
            wrapped(name, line.value(), lines);
            wrapped(" ".repeat(NAME + VALUE), line.why(), lines);
        }
    }

    private static void listed(String text, List<String> lines) {
        wrapped(MARK, text, lines);
    }

    /** The text after the head, further lines indented as far as the head is long. */
    private static void wrapped(String head, String text, List<String> lines) {
        var line = new StringBuilder(head);
        for (String word : text.split(" ", -1)) {
            if (line.length() + word.length() > WIDTH && line.length() > head.length()) {
                lines.add(line.toString().stripTrailing());
                line = new StringBuilder(" ".repeat(head.length()));
            }
            line.append(word).append(' ');
        }
        lines.add(line.toString().stripTrailing());
    }

    private static String pad(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }
}
