package org.ebbwatch.archive;

import static org.assertj.core.api.Assertions.assertThat;

import io.micronaut.context.ApplicationContext;
import io.micronaut.runtime.server.EmbeddedServer;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Map;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.ebbwatch.access.TokenFile;
import org.ebbwatch.evidence.BundleVerifier;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.evidence.signature.SigningKey;
import org.ebbwatch.handover.HandOverDesk;
import org.ebbwatch.judge.Act;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.web.Asked;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backup and hand-over as a running service gives them over HTTP. */
class KeepingRoutesTest {
    private static final long NOW = 1_764_104_400_000L;

    @TempDir
    Path folder;

    private WorkingRack rack;
    private EmbeddedServer server;
    private String token;
    private UUID over;
    private UUID open;

    @BeforeEach
    void start() throws IOException {
        rack = new WorkingRack(folder.resolve("records"));
        over = rack.checkIn(0, "A-17");
        open = rack.checkIn(1, "A-18");
        rack.seconds(700, 40_000);
        rack.act(over, Act.WITHDRAW);
        var tokens = new TokenFile(folder);
        token = tokens.begin().orElseThrow();
        var desk = new HandOverDesk(rack.storage(), new BundleWriter(Origin.current(), SigningKey.fresh()));
        server = ApplicationContext.builder()
                .properties(Map.of("micronaut.server.port", -1))
                .singletons(desk, new Backups(rack, folder.resolve("backups"), () -> NOW), tokens)
                .start()
                .getBean(EmbeddedServer.class)
                .start();
    }

    @AfterEach
    void stop() {
        server.getApplicationContext().close();
        rack.close();
    }

    private Path download(String query) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(server.getURI() + "/api/v1/hand-over?" + query))
                .build();
        HttpResponse<Path> response =
                HttpClient.newHttpClient().send(request, BodyHandlers.ofFile(folder.resolve("downloaded.zip")));
        assertThat(response.statusCode()).isEqualTo(200);
        assertThat(response.headers().firstValue("Content-Disposition"))
                .hasValueSatisfying(header -> assertThat(header).contains("hand-over.zip"));
        return response.body();
    }

    @Test
    void a_hand_over_has_papers_and_a_bundle_of_each_passage_that_verifies() throws Exception {
        try (var zip =
                new ZipFile(download("passage=" + over + "&passage=" + open).toFile())) {
            assertThat(Collections.list(zip.entries()))
                    .extracting(ZipEntry::getName)
                    .hasSize(5)
                    .startsWith("hand-over.pdf", "hand-over.csv", "labels.pdf")
                    .anyMatch(name -> name.startsWith("A-17-"))
                    .anyMatch(name -> name.startsWith("A-18-"));
            for (ZipEntry entry : Collections.list(zip.entries())) {
                if (entry.getName().endsWith(".ebb.zip")) {
                    Path bundle = folder.resolve(entry.getName());
                    Files.copy(zip.getInputStream(entry), bundle);
                    assertThat(BundleVerifier.verify(bundle)).isInstanceOf(Judged.class);
                }
            }
        }
    }

    @Test
    void a_hand_over_of_what_is_not_there_is_refused() {
        String nobody = "01900000-0000-7000-8000-00000000dead";
        Asked refused = Asked.get(server, "/api/v1/hand-over?passage=" + nobody);
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.body()).contains("there is no passage " + nobody);
        assertThat(Asked.get(server, "/api/v1/hand-over").status()).isEqualTo(400);
    }

    @Test
    void a_backup_is_made_beside_the_records_for_whoever_has_the_token_and_can_be_restored() throws IOException {
        assertThat(Asked.ask(server, "POST", "/api/v1/backups").status()).isEqualTo(401);
        Asked made = Asked.ask(server, "POST", "/api/v1/backups", "Authorization", "Bearer " + token);
        assertThat(made.status()).isEqualTo(201);
        Path file = Path.of(made.json().get("file").getStringValue());
        assertThat(file).hasParent(folder.resolve("backups")).hasFileName("ebbwatch-20251125T210000Z.backup.zip");
        assertThat(made.json().get("bytes").getLongValue()).isEqualTo(Files.size(file));
        Restore.into(file, folder.resolve("restored"));
        try (StoredRack restored = StoredRack.open(folder.resolve("restored"))) {
            assertThat(restored.cards()).extracting("id").containsExactlyInAnyOrder(over, open);
        }
    }
}
