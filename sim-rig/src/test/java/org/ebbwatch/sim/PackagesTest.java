package org.ebbwatch.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.spi.ToolProvider;
import org.junit.jupiter.api.Test;

/** Which packages of this module know which others, read from the compiled classes. */
class PackagesTest {
    private static final String SIM = "org.ebbwatch.sim.";

    @Test
    void dependencies_run_one_way() throws Exception {
        Map<String, Set<String>> known = new TreeMap<>();
        for (String line : dependencies().lines().toList()) {
            String[] words = line.strip().split("\\s+", -1);
            boolean isEdge = words.length >= 3 && words[1].equals("->") && !words[0].equals(words[2]);
            if (isEdge && words[0].startsWith(SIM) && words[2].startsWith(SIM)) {
                known.computeIfAbsent(words[0].substring(SIM.length()), name -> new TreeSet<>())
                        .add(words[2].substring(SIM.length()));
            }
        }
        assertThat(known)
                .isEqualTo(Map.of(
                        "scenario", Set.of("cell", "fault"),
                        "rack", Set.of("cell", "fault", "scenario"),
                        "link", Set.of("rack", "scenario")));
    }

    private static String dependencies() throws Exception {
        Path classes = Path.of(
                SimRig.class.getProtectionDomain().getCodeSource().getLocation().toURI());
        StringWriter said = new StringWriter();
        PrintWriter out = new PrintWriter(said);
        int code = ToolProvider.findFirst("jdeps").orElseThrow().run(out, out, "-verbose:package", classes.toString());
        assertThat(code).as(said.toString()).isZero();
        return said.toString();
    }
}
