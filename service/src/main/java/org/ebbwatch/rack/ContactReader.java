package org.ebbwatch.rack;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.ebbwatch.passage.ContactInput;
import org.ebbwatch.passage.ContactInput.Means;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads what is wired to a board's contact inputs. */
final class ContactReader {
    private static final List<String> KEYS = List.of("input", "means", "normally");
    private static final Map<String, Means> MEANS = Map.of("smoke", Means.SMOKE, "mainsLost", Means.MAINS_LOST);
    private static final String CLOSED = "closed";

    private final Faults faults;

    ContactReader(Faults faults) {
        this.faults = faults;
    }

    /** The contacts under the key {@code contacts} of a board; each input once. */
    List<ContactInput> read(YamlMapping board) {
        List<ContactInput> contacts = new ArrayList<>();
        Map<Integer, Integer> lines = new HashMap<>();
        for (Node node : board.list("contacts")) {
            YamlMapping contact = new YamlMapping(node, "a contact", KEYS, faults);
            OptionalInt input = contact.whole("input", 0, ContactInput.HIGHEST_INPUT);
            Optional<Means> means =
                    contact.choice("means", List.of("smoke", "mainsLost")).map(MEANS::get);
            Optional<Boolean> closed =
                    contact.choice("normally", List.of(CLOSED, "open")).map(CLOSED::equals);
            if (input.isPresent() && means.isPresent() && closed.isPresent()) {
                Integer before = lines.putIfAbsent(input.getAsInt(), contact.line("input"));
                if (before == null) {
                    contacts.add(new ContactInput(input.getAsInt(), means.get(), closed.get()));
                } else {
                    contact.fault("input", "input " + input.getAsInt() + " is wired already, in line " + before);
                }
            }
        }
        return contacts;
    }
}
