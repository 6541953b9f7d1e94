package org.ebbwatch.container;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Duration;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ebbwatch.postgres.Postgres;
import org.junit.jupiter.api.Assumptions;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.containers.ContainerFetchException;
import org.testcontainers.containers.GenericContainer;
import org.testcontainers.containers.Network;
import org.testcontainers.images.builder.ImageFromDockerfile;
import org.testcontainers.images.builder.Transferable;

/**
 * Three containers: PostgreSQL, a simulated rack that listens on loopback, and the service, which shares the simulator's loopback as
 * if both were plugged into one machine.
 */
final class Pod implements AutoCloseable {
    private static final int PAGE = 8_710;
    private static final Pattern TOKEN = Pattern.compile("Whoever has it can act on the rack:\\s+(\\S+)");

    private static final String SCENARIO =
            """
            seed: 7
            speed: 60
            boards:
              - serialNumber: SIM-POD
                channels:
                  - cell: {tag: A-17, chemistry: nmc, ratedAmpereHours: 2.6, stateOfChargePercent: 40}
                    loadOhms: 10
            """;

    private static final String RACK =
            """
            storage: /var/lib/ebbwatch
            database:
              url: jdbc:postgresql://%s:%d/postgres
              user: %s
              passwordFile: /etc/ebbwatch/database.password
            http:
              address: 0.0.0.0
            boards:
              - name: bench
                port: tcp:127.0.0.1:4000
            cells:
              - channel: 0
                tag: A-17
                chemistry: nmc
                ratedAmpereHours: 2.6
                loadOhms: 10
                switched: true
            """
                    .formatted(Postgres.ALIAS, Postgres.PORT, Postgres.USER);

    final Postgres postgres;
    private final Network network = Network.newNetwork();
    private final GenericContainer<?> rig;
    private final GenericContainer<?> service;
    private final HttpClient http = HttpClient.newHttpClient();

    /** Starts all three, or has the test reported as skipped where that cannot be. */
    Pod(Path folder) {
        assumeTrue(
                DockerClientFactory.instance().isDockerAvailable(),
                "no container engine answers: the service's image cannot be tried");
        postgres = Postgres.start(network);
        String jre = System.getProperty("jre.image", "eclipse-temurin:17-jre");
        ImageFromDockerfile image = ServiceImage.of(jre, folder);
        rig = new GenericContainer<>(image)
                .withNetwork(network)
                .withExposedPorts(PAGE)
                .withCopyToContainer(Transferable.of(SCENARIO, 0644), "/etc/rig/scenario.yaml")
                .withCreateContainerCmdModifier(command ->
                        command.withEntrypoint("java", "-cp", "/opt/ebbwatch/lib/*", "org.ebbwatch.sim.SimRig"))
                .withCommand("/etc/rig/scenario.yaml", "--port", "tcp:4000")
                .waitingFor(new Started());
        try {
            rig.start();
        } catch (ContainerFetchException e) {
            postgres.close();
            Assumptions.abort("no image can be made from " + jre + "; -Djre.image names another: " + e.getMessage());
        }
        service = new GenericContainer<>(image)
                .withNetworkMode("container:" + rig.getContainerId())
                .withCopyToContainer(Transferable.of(RACK, 0644), "/etc/ebbwatch/rack.yaml")
                .withCopyToContainer(Transferable.of(Postgres.PASSWORD + '\n', 0644), "/etc/ebbwatch/database.password")
                .waitingFor(new Started());
        service.start();
    }

    /** What the service tells under a path of its interface; empty while it does not answer. */
    String get(String path) throws InterruptedException {
        try {
            return http.send(request(path).build(), BodyHandlers.ofString()).body();
        } catch (IOException e) {
            return "";
        }
    }

    /** Acts on a passage as the operator. */
    int act(String passage, String body) throws IOException, InterruptedException {
        String path = "/api/v1/passages/" + passage;
        HttpResponse<String> seen = http.send(request(path).build(), BodyHandlers.ofString());
        HttpRequest act = request(path + "/acts")
                .header("Authorization", "Bearer " + token())
                .header("If-Match", seen.headers().firstValue("ETag").orElseThrow())
                .header("Idempotency-Key", UUID.randomUUID().toString())
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
        return http.send(act, BodyHandlers.discarding()).statusCode();
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + rig.getMappedPort(PAGE) + path))
                .timeout(Duration.ofSeconds(20));
    }

    boolean isServiceRunning() {
        return Boolean.TRUE.equals(service.getCurrentContainerInfo().getState().getRunning());
    }

    /** All the service has said on its terminal. */
    String said() {
        return service.getLogs();
    }

    private String token() {
        Matcher token = TOKEN.matcher(said());
        if (!token.find()) {
            throw new AssertionError("no token was shown: " + said());
        }
        return token.group(1);
    }

    /** Ends the service without a word to it, and starts it again over the same records. */
    void killAndStartService() {
        service.getDockerClient().killContainerCmd(service.getContainerId()).exec();
        service.getDockerClient().startContainerCmd(service.getContainerId()).exec();
    }

    /** Asks the service to stop; its exit code, 143 for a process that ended in order by this signal. */
    long stopService() {
        service.getDockerClient()
                .stopContainerCmd(service.getContainerId())
                .withTimeout(60)
                .exec();
        return service.getCurrentContainerInfo().getState().getExitCodeLong();
    }

    @Override
    public void close() {
        service.stop();
        rig.stop();
        postgres.close();
        network.close();
    }
}
