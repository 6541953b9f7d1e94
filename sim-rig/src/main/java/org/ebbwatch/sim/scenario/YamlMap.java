package org.ebbwatch.sim.scenario;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** One mapping of a YAML file with the keys it may have; every complaint names file and line. */
final class YamlMap {
    private final String source;
    private final Node node;
    private final Map<String, Node> children = new LinkedHashMap<>();

    /** The mapping of a node, or an empty one of the node that would hold it. */
    YamlMap(String source, Node node, String what, Set<String> keys) throws ScenarioException {
        this.source = source;
        this.node = node;
        if (!(node instanceof MappingNode mapping)) {
            throw complaint(node, what + " must be a mapping with keys; known here: " + list(keys));
        }
        for (NodeTuple tuple : mapping.getValue()) {
            String key = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "";
            if (!keys.contains(key)) {
                throw complaint(
                        tuple.getKeyNode(),
                        "unknown key '" + key + "' in " + what + Nearest.hint(key, keys) + "; known here: "
                                + list(keys));
            }
            if (children.put(key, tuple.getValueNode()) != null) {
                throw complaint(tuple.getKeyNode(), "key '" + key + "' stands twice in " + what);
            }
        }
    }

    private static String list(Set<String> keys) {
        return String.join(", ", keys);
    }

    private ScenarioException complaint(Node at, String message) {
        return new ScenarioException(place(at) + message);
    }

    private String place(Node at) {
        return source + ":"
                + at.getStartMark().map(Mark::getLine).map(line -> line + 1).orElse(1) + ": ";
    }

    /** Makes something of what was read; a refusal of its values names the line on which this mapping begins. */
    <T> T make(Supplier<T> maker) throws ScenarioException {
        try {
            return maker.get();
        } catch (IllegalArgumentException e) {
            throw new ScenarioException(place(node) + e.getMessage(), e);
        }
    }

    ScenarioException wrong(String key, String message) {
        return complaint(children.getOrDefault(key, node), message);
    }

    boolean has(String key) {
        return children.containsKey(key);
    }

    String text(String key) throws ScenarioException {
        Node child = children.get(key);
        if (child == null) {
            throw complaint(node, "'" + key + "' is missing");
        }
        if (child instanceof ScalarNode scalar) {
            return scalar.getValue();
        }
        throw complaint(child, "'" + key + "' must be one value");
    }

    String text(String key, String usual) throws ScenarioException {
        return has(key) ? text(key) : usual;
    }

    double number(String key, double lowest, double highest) throws ScenarioException {
        String text = text(key);
        double number;
        try {
            number = Double.parseDouble(text);
        } catch (NumberFormatException e) {
            number = Double.NaN;
        }
        if (!(number >= lowest && number <= highest)) {
            throw wrong(
                    key,
                    "'" + key + "' is '" + text + "', allowed is a number from " + plain(lowest) + " to "
                            + plain(highest));
        }
        return number;
    }

    private static String plain(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e15
                ? Long.toString((long) number)
                : Double.toString(number);
    }

    double number(String key, double usual, double lowest, double highest) throws ScenarioException {
        return has(key) ? number(key, lowest, highest) : usual;
    }

    long whole(String key, long usual, long lowest, long highest) throws ScenarioException {
        if (!has(key)) {
            return usual;
        }
        String text = text(key);
        try {
            long number = Long.parseLong(text);
            if (number >= lowest && number <= highest) {
                return number;
            }
        } catch (NumberFormatException e) {
            // said below, with what is allowed
        }
        throw wrong(
                key, "'" + key + "' is '" + text + "', allowed is a whole number from " + lowest + " to " + highest);
    }

    boolean flag(String key, boolean usual) throws ScenarioException {
        if (!has(key)) {
            return usual;
        }
        return switch (text(key)) {
            case "true" -> true;
            case "false" -> false;
            default -> throw wrong(key, "'" + key + "' is '" + text(key) + "', allowed is true or false");
        };
    }

    long millis(String key) throws ScenarioException {
        OptionalLong millis = Durations.millis(text(key));
        return millis.orElseThrow(() -> wrong(key, "'" + key + "' is no duration; allowed is " + Durations.ALLOWED));
    }

    long millis(String key, long usual) throws ScenarioException {
        return has(key) ? millis(key) : usual;
    }

    /** One of some named things. */
    <T> T choice(String key, Map<String, T> choices) throws ScenarioException {
        String text = text(key);
        T chosen = choices.get(text);
        if (chosen == null) {
            throw wrong(
                    key,
                    "'" + key + "' is '" + text + "'" + Nearest.hint(text, choices.keySet()) + "; allowed is "
                            + list(choices.keySet()));
        }
        return chosen;
    }

    <T> T choice(String key, Map<String, T> choices, T usual) throws ScenarioException {
        return has(key) ? choice(key, choices) : usual;
    }

    /** A mapping below this one, with its keys. */
    YamlMap map(String key, Set<String> keys) throws ScenarioException {
        return new YamlMap(source, children.get(key), "'" + key + "'", keys);
    }

    /** The mappings of a list below this one; the keys of each may depend on what it is. Empty where the key is missing. */
    List<YamlMap> maps(String key, String what, Function<Node, Set<String>> keys) throws ScenarioException {
        List<YamlMap> maps = new ArrayList<>();
        if (!has(key)) {
            return maps;
        }
        if (!(children.get(key) instanceof SequenceNode sequence)) {
            throw wrong(key, "'" + key + "' must be a list");
        }
        for (Node item : sequence.getValue()) {
            maps.add(new YamlMap(source, item, what, keys.apply(item)));
        }
        return maps;
    }

    /** A value of a mapping that was not yet checked, "" where there is none. */
    static String peek(Node node, String key) {
        if (node instanceof MappingNode mapping) {
            for (NodeTuple tuple : mapping.getValue()) {
                if (tuple.getKeyNode() instanceof ScalarNode name
                        && name.getValue().equals(key)
                        && tuple.getValueNode() instanceof ScalarNode held) {
                    return held.getValue();
                }
            }
        }
        return "";
    }
}
