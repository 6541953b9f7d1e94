package org.ebbwatch.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.ebbwatch.cli.Ebbwatch;
import org.ebbwatch.demo.Workshop.Bench;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.Refolded;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.Trigger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Part of the story, kept on disk as the service keeps it, and the bundles made of it when the service is stopped. */
class StoredStoryTest {
    private static final long LONGEST_MILLIS = Duration.ofDays(7).toMillis();
    private static final long INTERVAL_MILLIS = 2_000;

    @TempDir
    static Path folder;

    private static Path records;
    private static List<PassageView> watched;

    @BeforeAll
    static void live() {
        records = folder.resolve("records");
        List<StoryCell> all = Workshop.story().boards().get(0).cells();
        List<StoryCell> some = List.of(all.get(0), all.get(2), all.get(4));
        Fault silence = Fault.onBoard(
                        FaultKind.SILENT, Trigger.at(Duration.ofHours(17).toMillis()))
                .lasting(Duration.ofMinutes(10).toMillis());
        try (StoredRack storage = StoredRack.open(records)) {
            var rack = new InProcessRack(
                    new Bench("window", some, List.of(silence), true), 7, INTERVAL_MILLIS, storage, storage);
            rack.checkInAll(Procedure.careful());
            rack.run(() -> rack.passages().stream().allMatch(StoredStoryTest::isSettled), LONGEST_MILLIS);
            watched = rack.passages();
        }
        assertThat(watched)
                .extracting(PassageView::phase)
                .containsExactlyInAnyOrder(Phase.RELEASED, Phase.RELEASED, Phase.HELD);
    }

    private static boolean isSettled(PassageView passage) {
        return passage.phase().isOver() || passage.phase() == Phase.HELD;
    }

    private record Ran(int code, String out) {}

    private static Ran run(Object... arguments) {
        var out = new StringWriter();
        CommandLine program = Ebbwatch.commandLine();
        program.setOut(new PrintWriter(out));
        program.setErr(new PrintWriter(out));
        int code = program.execute(Stream.of(arguments).map(Object::toString).toArray(String[]::new));
        return new Ran(code, out.toString());
    }

    private static List<Path> bundlesIn(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }

    @Test
    void folded_again_it_is_what_was_written_down_while_it_was_watched() {
        try (StoredRack storage = StoredRack.open(records)) {
            assertThat(storage.cards()).hasSize(3);
            for (PassageCard card : storage.cards()) {
                Refolded refolded = storage.refold(card);
                assertThat(refolded.events()).isNotEmpty().isEqualTo(storage.recorded(card));
            }
        }
    }

    @Test
    void a_bundle_of_every_passage_is_written_and_verifies() throws IOException {
        Path bundles = folder.resolve("all");
        Ran bundle = run("bundle", "--storage", records, "--to", bundles);
        assertThat(bundle.code()).as(bundle.out()).isZero();
        List<Object> verify = new ArrayList<>(List.of("verify"));
        verify.addAll(bundlesIn(bundles));
        assertThat(verify).hasSize(4);
        Ran verified = run(verify.toArray());
        assertThat(verified.code()).as(verified.out()).isZero();
        assertThat(verified.out().lines().filter(line -> line.contains("VERIFIED: judged again by version")))
                .hasSize(3);
        assertThat(verified.out()).contains("simulated  YES, at 3600 times real time", "caution    1 gap(s)");
        for (PassageView passage : watched) {
            assertThat(verified.out()).contains(passage.phase() + ": " + passage.reason());
        }
    }

    @Test
    void bundles_of_the_same_records_are_the_same_to_the_last_byte() throws IOException {
        Path one = folder.resolve("one");
        Path other = folder.resolve("other");
        run("bundle", "--storage", records, "--to", one);
        run("bundle", "--storage", records, "--to", other);
        for (Path bundle : bundlesIn(one)) {
            assertThat(other.resolve(bundle.getFileName())).hasSameBinaryContentAs(bundle);
        }
        Ran again = run("bundle", "--storage", records, "--to", one);
        assertThat(again.code()).isZero();
        assertThat(again.out().lines()).hasSize(3).allMatch(line -> line.endsWith("there already, the same"));
    }

    @Test
    void one_passage_can_be_asked_for_by_tag_or_id() throws IOException {
        PassageView third = watched.get(2);
        Path byTag = folder.resolve("by-tag");
        Path byId = folder.resolve("by-id");
        assertThat(run("bundle", "--storage", records, "--tag", third.tag(), "--to", byTag)
                        .code())
                .isZero();
        assertThat(run("bundle", "--storage", records, "--passage", third.id(), "--to", byId)
                        .code())
                .isZero();
        assertThat(bundlesIn(byTag)).hasSize(1);
        assertThat(bundlesIn(byId)).hasSize(1);
        assertThat(bundlesIn(byTag).get(0))
                .hasSameBinaryContentAs(bundlesIn(byId).get(0));
    }

    @Test
    void a_passage_that_is_not_there_is_refused() {
        Ran none = run("bundle", "--storage", records, "--tag", "nobody's", "--to", folder.resolve("none"));
        assertThat(none.code()).isEqualTo(3);
        assertThat(none.out()).contains("no such passage");
        assertThat(folder.resolve("none")).doesNotExist();
        assertThat(run(
                                "bundle",
                                "--storage",
                                records,
                                "--tag",
                                "x",
                                "--passage",
                                watched.get(0).id(),
                                "--to",
                                folder)
                        .code())
                .isEqualTo(2);
    }

    @Test
    void a_folder_without_records_is_refused_and_stays_as_it_was() {
        Path empty = folder.resolve("empty");
        Ran refused = run("bundle", "--storage", empty, "--to", folder.resolve("none"));
        assertThat(refused.code()).isEqualTo(3);
        assertThat(refused.out()).contains("no records");
        assertThat(empty).doesNotExist();
    }

    @Test
    void records_that_a_service_is_using_are_refused() throws IOException, InterruptedException {
        try (StoredRack inUse = StoredRack.open(records)) {
            assertThat(inUse.cards()).isNotEmpty();
            Process other = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-cp",
                            System.getProperty("java.class.path"),
                            Ebbwatch.class.getName(),
                            "bundle",
                            "--storage",
                            records.toString(),
                            "--to",
                            folder.resolve("in-use").toString())
                    .redirectErrorStream(true)
                    .start();
            String said = new String(other.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(other.waitFor()).as(said).isEqualTo(3);
            assertThat(said).contains("another process has the database", "stop it, or name another folder");
            assertThat(folder.resolve("in-use")).doesNotExist();
        }
    }
}
