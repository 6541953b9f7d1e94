package org.ebbwatch.rack;

import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;

/** The outermost mapping of a file. */
public final class YamlRoot {
    private YamlRoot() {}

    /**
     * Takes a text apart.
     *
     * @param what the thing it describes, such as "rack file"
     * @param known the keys it may have
     * @throws RackFileFaulty if it is empty or no YAML
     */
    public static YamlMapping of(String text, String what, List<String> known, Faults faults) throws RackFileFaulty {
        Optional<Node> root = Optional.empty();
        try {
            root = new Compose(LoadSettings.builder().build()).composeString(text);
            if (root.isEmpty()) {
                faults.add(1, "the " + what + " is empty; its keys are " + String.join(", ", known));
            }
        } catch (MarkedYamlEngineException e) {
            faults.add(Faults.line(e.getProblemMark()), "this is not YAML: " + e.getProblem());
        } catch (YamlEngineException e) {
            faults.add(1, "this is not YAML: " + e.getMessage());
        }
        if (root.isEmpty()) {
            faults.throwIfAny();
        }
        return new YamlMapping(root.orElseThrow(), "a " + what, known, faults);
    }
}
