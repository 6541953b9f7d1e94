package org.ebbwatch.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.InventedPassage;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.evidence.signature.SigningKey;
import org.ebbwatch.judge.JudgeVersion;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class VerifyCommandTest {

    private static final SigningKey KEY = SigningKey.fresh();

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private Path good;
    private Path damaged;
    private Path otherJudge;
    private Path letter;

    @BeforeEach
    void write() throws IOException {
        good = bundle(InventedPassage.whole("A-17"), Origin.current());
        damaged = folder.resolve("damaged.ebb.zip");
        byte[] bytes = Files.readAllBytes(good);
        bytes[1_000] ^= 0x10;
        Files.write(damaged, bytes);
        otherJudge = bundle(InventedPassage.whole("A-18"), new Origin("ebbwatch 9.9.9", JudgeVersion.NUMBER + 1));
        letter = Files.writeString(folder.resolve("letter.txt"), "Dear all");
    }

    private Path bundle(InventedPassage passage, Origin origin) throws IOException {
        return new BundleWriter(origin, KEY).write(passage.records(), folder).file();
    }

    private int verify(Path... files) {
        List<String> arguments = new ArrayList<>(List.of("verify"));
        for (Path file : files) {
            arguments.add(file.toString());
        }
        CommandLine program = Ebbwatch.commandLine();
        program.setOut(new PrintWriter(out));
        program.setErr(new PrintWriter(out));
        return program.execute(arguments.toArray(new String[0]));
    }

    private String line(String beginning) {
        return out.toString()
                .lines()
                .map(String::strip)
                .filter(line -> line.startsWith(beginning))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line begins with " + beginning + " in\n" + out));
    }

    @Test
    void a_bundle_that_is_what_it_was_ends_with_0() {
        assertThat(verify(good)).isZero();
        assertThat(out.toString()).startsWith("A-17-");
        assertThat(line("intact")).contains("7 parts");
        assertThat(line("simulated")).isEqualTo("simulated  YES, at 600 times real time: no real cell");
        assertThat(line("verdict")).contains("RELEASED");
        assertThat(line("VERIFIED"))
                .isEqualTo("VERIFIED: judged again by version " + JudgeVersion.NUMBER + ": the same verdict");
    }

    @Test
    void a_damaged_one_ends_with_1_and_says_which_part() {
        assertThat(verify(damaged)).isEqualTo(1);
        assertThat(line("DAMAGED")).startsWith("DAMAGED: trace.csv: ");
        assertThat(out.toString()).doesNotContain("VERIFIED", "intact");
    }

    @Test
    void one_by_another_judge_ends_with_4_and_says_first_that_it_is_intact() {
        assertThat(verify(otherJudge)).isEqualTo(4);
        assertThat(line("INTACT, ANOTHER JUDGE"))
                .contains("made by version " + (JudgeVersion.NUMBER + 1))
                .contains("judged again by version " + JudgeVersion.NUMBER + ": the same verdict");
        assertThat(out.toString().indexOf("  intact "))
                .isPositive()
                .isLessThan(out.toString().indexOf("judged again"));
        assertThat(out.toString()).doesNotContain("VERIFIED");
    }

    @Test
    void what_is_no_bundle_ends_with_3() {
        assertThat(verify(letter)).isEqualTo(3);
        assertThat(verify(folder.resolve("nowhere"))).isEqualTo(3);
        assertThat(line("CANNOT BE READ")).contains("no bundle");
    }

    private int verifyBy(String key, Path file) {
        CommandLine program = Ebbwatch.commandLine();
        program.setOut(new PrintWriter(out));
        program.setErr(new PrintWriter(out));
        return program.execute("verify", "--key", key, file.toString());
    }

    @Test
    void a_signer_is_named_and_not_known_until_the_key_is_named_too() {
        verify(good);
        assertThat(line("signed"))
                .isEqualTo("signed     by " + KEY.signer()
                        + ", not known to you: compare it, or name the key you know by --key");
        assertThat(verifyBy(KEY.signer().toString(), good)).isZero();
        assertThat(out.toString()).contains("signed     by the key you named");
    }

    @Test
    void a_foreign_signature_ends_with_5_and_a_key_that_is_none_is_a_wrong_call() {
        assertThat(verifyBy(SigningKey.fresh().signer().hex(), good)).isEqualTo(5);
        assertThat(line("signed")).isEqualTo("signed     BY ANOTHER KEY than you named: " + KEY.signer());
        assertThat(verifyBy(SigningKey.fresh().signer().hex(), damaged)).isEqualTo(1);
        assertThat(verifyBy(SigningKey.fresh().signer().hex(), otherJudge)).isEqualTo(5);
        assertThat(verifyBy("abc", good)).isEqualTo(2);
    }

    @Test
    void a_bundle_of_format_1_bears_no_signature_and_says_so() throws Exception {
        Path old = Path.of(
                VerifyCommandTest.class.getResource("/bundles/judge-6.ebb.zip").toURI());
        verify(old);
        assertThat(line("signed")).isEqualTo("signed     by nobody");
        assertThat(verifyBy(KEY.signer().hex(), old)).isEqualTo(5);
    }

    @Test
    void no_file_at_all_is_a_wrong_call() {
        assertThat(verify()).isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource({
        "good, otherJudge, 4",
        "otherJudge, letter, 3",
        "letter, damaged, 1",
        "damaged, good, 1",
        "good, good, 0"
    })
    void of_several_files_the_worst_decides(String one, String other, int code) {
        assertThat(verify(named(one), named(other))).isEqualTo(code);
    }

    private Path named(String name) {
        return switch (name) {
            case "good" -> good;
            case "otherJudge" -> otherJudge;
            case "letter" -> letter;
            default -> damaged;
        };
    }

    @Test
    void a_tag_cannot_write_lines_of_its_own() throws IOException {
        Path hostile = bundle(InventedPassage.brief("x\u001B[2J\r\nVERIFIED: all\u202Ewell"), Origin.current());
        assertThat(verify(hostile)).isZero();
        assertThat(out.toString().lines().filter(line -> line.strip().startsWith("VERIFIED")))
                .hasSize(1);
        assertThat(out.toString().replace(System.lineSeparator(), "")).doesNotContain("\u001B", "\r", "\n", "\u202E");
        assertThat(line("cell")).contains("x?[2J??VERIFIED: all?well");
    }

    @Test
    void the_version_the_program_tells_is_the_one_that_bundles_name_and_that_of_the_build() throws IOException {
        CommandLine program = Ebbwatch.commandLine();
        program.setOut(new PrintWriter(out));
        program.execute("--version");
        assertThat(out.toString().strip()).isEqualTo(Origin.SOFTWARE);
        String build = Files.readString(Path.of(System.getProperty("basedir", "."), "pom.xml"));
        String version = build.replaceFirst("(?s).*?<parent>.*?<version>([^<]+)</version>.*", "$1");
        assertThat(Origin.SOFTWARE).isEqualTo("ebbwatch " + version);
    }
}
