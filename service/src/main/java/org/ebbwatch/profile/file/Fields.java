package org.ebbwatch.profile.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.ebbwatch.rack.Faults;
import org.ebbwatch.rack.YamlMapping;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * The fields of one mapping of a profile. What is missing has its usual value; what is wrong is a fault and has its usual value
 * too, so that reading goes on to the other faults.
 */
final class Fields {
    private final YamlMapping mapping;
    private final Faults faults;

    Fields(Node node, String what, List<String> known, Faults faults) {
        this(new YamlMapping(node, what, known, faults), faults);
    }

    Fields(YamlMapping mapping, Faults faults) {
        this.mapping = mapping;
        this.faults = faults;
    }

    boolean has(String key) {
        return mapping.has(key);
    }

    int line() {
        return mapping.line();
    }

    void fault(String key, String what) {
        mapping.fault(key, what);
    }

    double number(String key, double least, double most, double usual) {
        return has(key) ? neededNumber(key, least, most, usual) : usual;
    }

    double neededNumber(String key, double least, double most, double otherwise) {
        return mapping.number(key, least, most).orElse(otherwise);
    }

    OptionalDouble optionalNumber(String key, double least, double most) {
        return has(key) ? mapping.number(key, least, most) : OptionalDouble.empty();
    }

    int whole(String key, int least, int most, int usual) {
        return has(key) ? neededWhole(key, least, most, usual) : usual;
    }

    int neededWhole(String key, int least, int most, int otherwise) {
        return mapping.whole(key, least, most).orElse(otherwise);
    }

    OptionalInt optionalWhole(String key, int least, int most) {
        return has(key) ? mapping.whole(key, least, most) : OptionalInt.empty();
    }

    String choice(String key, List<String> allowed, String usual) {
        return has(key) ? neededChoice(key, allowed, usual) : usual;
    }

    String neededChoice(String key, List<String> allowed, String otherwise) {
        return mapping.choice(key, allowed).orElse(otherwise);
    }

    Optional<String> text(String key, String allowed) {
        return mapping.text(key, allowed);
    }

    Optional<String> optionalText(String key, String allowed) {
        return has(key) ? mapping.text(key, allowed) : Optional.empty();
    }

    /** The mapping at a key; empty where there is none. */
    Optional<Fields> fields(String key, List<String> known) {
        return mapping.node(key).map(node -> new Fields(node, key, known, faults));
    }

    /** The mapping at a key that must be there. */
    Optional<Fields> neededFields(String key, List<String> known, String what) {
        if (!has(key) && !mapping.isMisspelt(key)) {
            faults.add(line(), what + " lacks " + key + "; its keys are " + String.join(", ", known));
        }
        return fields(key, known);
    }

    /** The mappings of a list. */
    List<Fields> list(String key, String what, List<String> known) {
        return mapping.list(key).stream()
                .map(node -> new Fields(node, what, known, faults))
                .toList();
    }

    /** The words of a list. */
    List<String> words(String key, String allowed) {
        List<String> words = new ArrayList<>();
        for (Node node : mapping.list(key)) {
            if (node instanceof ScalarNode scalar && !scalar.getValue().isBlank()) {
                words.add(scalar.getValue());
            } else {
                faults.add(Faults.line(node), allowed);
            }
        }
        return words;
    }

    /** The whole numbers of a list. */
    List<Double> numbers(String key, int howMany, String allowed) {
        List<Double> numbers = new ArrayList<>();
        for (String word : words(key, allowed)) {
            try {
                numbers.add(Double.parseDouble(word));
            } catch (NumberFormatException e) {
                fault(key, allowed);
            }
        }
        if (numbers.size() != howMany) {
            fault(key, allowed);
        }
        return numbers.size() == howMany ? numbers : List.of();
    }
}
