package org.ebbwatch.rack;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.Node;

/** Gathers what is wrong in one file, so that a person sees all of it at once. */
public final class Faults {

    private record Fault(int line, String what) {}

    private final String source;
    private final List<Fault> found = new ArrayList<>();

    public Faults(String source) {
        this.source = source;
    }

    public static int line(Node node) {
        return line(node.getStartMark());
    }

    public static int line(Optional<Mark> mark) {
        return mark.map(Mark::getLine).orElse(0) + 1;
    }

    public void add(int line, String what) {
        found.add(new Fault(line, what));
    }

    public void throwIfAny() throws RackFileFaulty {
        if (!found.isEmpty()) {
            throw new RackFileFaulty(found.stream()
                    .sorted(Comparator.comparingInt(Fault::line))
                    .map(fault -> source + ":" + fault.line + ": " + fault.what)
                    .toList());
        }
    }
}
