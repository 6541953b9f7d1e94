package org.ebbwatch.rack;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/** One mapping of a rack file. Whatever is asked of it and wrong becomes a fault with its line; what is asked for stays empty then. */
public final class YamlMapping {

    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");
    private static final Pattern WHOLE = Pattern.compile("[+-]?\\d{1,9}");

    private final String what;
    private final int line;
    private final Faults faults;
    private final Map<String, Node> entries = new LinkedHashMap<>();
    private final Set<String> misspelt = new HashSet<>();

    /**
     * Takes a mapping apart; duplicate and unknown keys are faults.
     *
     * @param what the thing it describes, such as "a cell"
     * @param known the keys it may have
     */
    public YamlMapping(Node node, String what, List<String> known, Faults faults) {
        this.what = what;
        this.line = Faults.line(node);
        this.faults = faults;
        if (!(node instanceof MappingNode mapping)) {
            faults.add(line, what + " is written as keys and values; its keys are " + String.join(", ", known));
            return;
        }
        for (NodeTuple tuple : mapping.getValue()) {
            String key = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "";
            int keyLine = Faults.line(tuple.getKeyNode());
            if (!known.contains(key)) {
                Optional<String> meant = NearestKey.to(key, known);
                meant.ifPresent(misspelt::add);
                String guess =
                        meant.map(nearest -> "; did you mean " + nearest + "?").orElse(".");
                faults.add(
                        keyLine,
                        key + " is not a key of " + what + guess + " Its keys are " + String.join(", ", known));
            } else if (entries.putIfAbsent(key, tuple.getValueNode()) != null) {
                faults.add(keyLine, key + " is given twice");
            }
        }
    }

    /** Whether a key is missing only because another was taken for its misspelling, which is a fault already. */
    public boolean isMisspelt(String key) {
        return misspelt.contains(key) && !entries.containsKey(key);
    }

    public int line() {
        return line;
    }

    public int line(String key) {
        return entries.containsKey(key) ? Faults.line(entries.get(key)) : line;
    }

    public boolean has(String key) {
        return entries.containsKey(key);
    }

    public void fault(String key, String message) {
        faults.add(line(key), message);
    }

    /** The text of a key as it stands in the file; a missing key is a fault that says what is allowed. */
    public Optional<String> text(String key, String allowed) {
        Node node = entries.get(key);
        if (node == null) {
            if (!isMisspelt(key)) {
                faults.add(line, what + " lacks " + key + "; " + allowed);
            }
            return Optional.empty();
        }
        if (!(node instanceof ScalarNode scalar)
                || scalar.getTag().equals(Tag.NULL)
                || scalar.getValue().isBlank()) {
            fault(key, key + " has no value; " + allowed);
            return Optional.empty();
        }
        return Optional.of(scalar.getValue());
    }

    /** One of a few words. */
    public Optional<String> choice(String key, List<String> allowed) {
        String known = key + " is one of " + String.join(", ", allowed);
        Optional<String> text = text(key, known);
        if (text.isPresent() && !allowed.contains(text.get())) {
            fault(key, key + " " + quoted(text.get()) + " is not known; " + known);
            return Optional.empty();
        }
        return text;
    }

    public Optional<Boolean> yesOrNo(String key) {
        return choice(key, List.of("true", "false")).map("true"::equals);
    }

    public OptionalInt whole(String key, int least, int most) {
        String allowed = key + " is a whole number from " + least + " to " + most;
        Optional<String> text = text(key, allowed);
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        if (WHOLE.matcher(text.get()).matches()) {
            int number = Integer.parseInt(text.get());
            if (number >= least && number <= most) {
                return OptionalInt.of(number);
            }
        }
        fault(key, key + " " + quoted(text.get()) + " is not allowed; " + allowed);
        return OptionalInt.empty();
    }

    public OptionalDouble number(String key, double least, double most) {
        String allowed = key + " is a number from " + plain(least) + " to " + plain(most)
                + ", with a point and without its unit";
        Optional<String> text = text(key, allowed);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        if (NUMBER.matcher(text.get()).matches()) {
            double number = Double.parseDouble(text.get());
            if (number >= least && number <= most) {
                return OptionalDouble.of(number);
            }
        }
        fault(key, key + " " + quoted(text.get()) + " is not allowed; " + allowed);
        return OptionalDouble.empty();
    }

    /** The items of a list; none where the key is missing. */
    public List<Node> list(String key) {
        Node node = entries.get(key);
        if (node == null) {
            return List.of();
        }
        if (!(node instanceof SequenceNode sequence)) {
            fault(key, key + " is a list: each item begins with a dash");
            return List.of();
        }
        return sequence.getValue();
    }

    public Optional<Node> node(String key) {
        return Optional.ofNullable(entries.get(key));
    }

    private static String quoted(String text) {
        return '"' + text + '"';
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
