package org.ebbwatch.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.spi.ToolProvider;
import org.ebbwatch.rig.message.Message;
import org.junit.jupiter.api.Test;

/** What the compiled module depends on, as the JDK's own jdeps finds it. */
class ModuleDependencyTest {
    private static final Pattern EDGE = Pattern.compile("\\s+(\\S+)\\s+-> (\\S+)\\s+(\\S+).*");
    private static final String MESSAGE = "org.ebbwatch.rig.message";
    private static final String WIRE = "org.ebbwatch.rig.wire";
    private static final String SENSOR = "org.ebbwatch.rig.sensor";

    @Test
    void the_module_needs_nothing_but_the_base_of_the_jdk_and_its_packages_point_one_way() throws URISyntaxException {
        Map<String, Set<String>> edges = new TreeMap<>();
        for (String line : jdeps().split("\n", -1)) {
            Matcher edge = EDGE.matcher(line);
            if (edge.matches()) {
                edges.computeIfAbsent(edge.group(1), from -> new TreeSet<>())
                        .add(edge.group(2).startsWith("java.") ? edge.group(3) : edge.group(2));
            }
        }
        assertThat(edges)
                .isEqualTo(Map.of(
                        MESSAGE, Set.of("java.base"),
                        SENSOR, Set.of("java.base"),
                        WIRE, Set.of("java.base", MESSAGE)));
    }

    private static String jdeps() throws URISyntaxException {
        String classes = Path.of(Message.class
                        .getProtectionDomain()
                        .getCodeSource()
                        .getLocation()
                        .toURI())
                .toString();
        StringWriter out = new StringWriter();
        PrintWriter writer = new PrintWriter(out);
        int exit = ToolProvider.findFirst("jdeps").orElseThrow().run(writer, writer, "-verbose:package", classes);
        assertThat(exit).as(out.toString()).isZero();
        return out.toString();
    }
}
