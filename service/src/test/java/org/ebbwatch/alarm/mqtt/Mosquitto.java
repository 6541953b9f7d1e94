package org.ebbwatch.alarm.mqtt;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.containers.ContainerFetchException;
import org.testcontainers.containers.GenericContainer;
import org.testcontainers.images.builder.Transferable;
import org.testcontainers.utility.DockerImageName;

/** A Mosquitto broker in a container. */
final class Mosquitto implements AutoCloseable {
    private static final int PORT = 1_883;
    private static final String CONFIGURATION = "/ebbwatch-mosquitto.conf";

    private final GenericContainer<?> container;

    private Mosquitto(GenericContainer<?> container) {
        this.container = container;
    }

    /** Starts one, or has the test reported as skipped where that cannot be. */
    static Mosquitto start(String... configuration) {
        assumeTrue(
                DockerClientFactory.instance().isDockerAvailable(),
                "no container engine answers: no broker to test with");
        String image = System.getProperty("mosquitto.image", "");
        List<String> lines = new ArrayList<>(List.of("listener " + PORT, "allow_anonymous true"));
        lines.addAll(List.of(configuration));
        var container = new GenericContainer<>(DockerImageName.parse(image))
                .withExposedPorts(PORT)
                .withCopyToContainer(Transferable.of(String.join("\n", lines) + '\n', 0644), CONFIGURATION)
                .withCommand("mosquitto", "-c", CONFIGURATION);
        try {
            container.start();
        } catch (ContainerFetchException e) {
            Assumptions.abort(
                    "the image " + image + " cannot be had; -Dmosquitto.image names another: " + e.getMessage());
        }
        return new Mosquitto(container);
    }

    int port() {
        return container.getMappedPort(PORT);
    }

    String host() {
        return container.getHost();
    }

    @Override
    public void close() {
        container.stop();
    }
}
