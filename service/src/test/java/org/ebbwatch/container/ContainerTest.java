package org.ebbwatch.container;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.awaitility.Awaitility;
import org.awaitility.core.ConditionTimeoutException;
import org.awaitility.core.TerminalFailureException;
import org.ebbwatch.postgres.Postgres;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The system as a whole: the service's own image, a rack over TCP, a database, a person, and what goes wrong overnight. */
class ContainerTest {
    private static final Duration PATIENCE = Duration.ofMinutes(2);
    private static final Pattern ID = Pattern.compile("\"id\":\"([0-9a-f-]{36})\"");
    private static final String PASSAGES = "/api/v1/passages";

    @TempDir
    Path folder;

    @Test
    void the_image_watches_a_rack_through_a_database_that_is_away_and_its_own_sudden_end() throws Exception {
        try (Pod pod = new Pod(folder)) {
            await("the cell is checked in", () -> pod.get(PASSAGES).contains("ASK_PUT_ON"), pod);
            Matcher id = ID.matcher(pod.get(PASSAGES));
            assertThat(id.find()).isTrue();
            String passage = id.group(1);
            assertThat(pod.act(passage, "{\"act\": \"PUT_ON\"}")).isEqualTo(200);
            await("the cell drains", () -> pod.get(PASSAGES).contains("\"phase\":\"DRAIN\""), pod);

            pod.postgres.kill();
            await(
                    "it is said that the database is away",
                    () -> pod.get("/api/v1/alarms").contains("STORAGE_FAULT"),
                    pod);
            assertThat(pod.act(passage, "{\"act\": \"WITHDRAW\"}")).isEqualTo(200);
            assertThat(pod.get(PASSAGES + "/" + passage)).contains("\"phase\":\"WITHDRAWN\"");

            pod.killAndStartService();
            pod.postgres.startAgain();
            await("the service serves again", () -> pod.get("/health").contains("UP"), pod);
            assertThat(pod.postgres.text(
                            Postgres.USER, "select string_agg(to_phase, ' ' order by sequence) from transition"))
                    .as("what was told before and while the database was away")
                    .isEqualTo("DRAIN WITHDRAWN");

            assertThat(pod.stopService()).as("stopped in order: %s", pod.said()).isEqualTo(143);
        }
    }

    private static void await(String what, Callable<Boolean> seen, Pod pod) {
        try {
            Awaitility.await(what)
                    .atMost(PATIENCE)
                    .pollInterval(Duration.ofMillis(500))
                    .failFast("the service has ended", () -> !pod.isServiceRunning())
                    .until(seen);
        } catch (ConditionTimeoutException | TerminalFailureException e) {
            throw new AssertionError(what + ": never seen. The service said:\n" + pod.said(), e);
        }
    }
}
