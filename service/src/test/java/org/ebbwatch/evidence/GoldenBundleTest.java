package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URISyntaxException;
import java.nio.file.Path;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.evidence.signature.SignerKey;
import org.ebbwatch.judge.JudgeVersion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A bundle of an earlier build; see {@code bundles/README.md} among the test resources. */
class GoldenBundleTest {

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, JudgeVersion.NUMBER})
    void a_bundle_written_long_ago_is_still_read_and_its_own_judge_still_makes_its_verdict(int version)
            throws URISyntaxException {
        Path golden = Path.of(GoldenBundleTest.class
                .getResource("/bundles/judge-" + version + ".ebb.zip")
                .toURI());
        Verification verification = BundleVerifier.verify(golden);
        assertThat(verification).isInstanceOf(Judged.class);
        var judged = (Judged) verification;
        assertThat(judged.account().tag()).isEqualTo("golden");
        assertThat(judged.account().judgeVersion()).isEqualTo(version);
        assertThat(judged.account().phase()).isEqualTo("RELEASED");
        if (judged.isSameJudge()) {
            assertThat(judged.again())
                    .as("the judge has changed: raise JudgeVersion.NUMBER by one")
                    .isEqualTo(new Again.Same());
        }
    }

    @Test
    void one_of_format_2_is_still_read_with_its_signer_and_its_chain() throws URISyntaxException {
        Path golden = Path.of(
                GoldenBundleTest.class.getResource("/bundles/format-2.ebb.zip").toURI());
        assertThat(BundleVerifier.verify(golden)).isInstanceOfSatisfying(Judged.class, judged -> {
            assertThat(judged.signer())
                    .contains(new SignerKey("a11058a3aa5fb572406aa716eda1ebb4c6272ce7f9373e2bd679c955b4c75005"));
            assertThat(judged.account().parts()).isEqualTo(7);
            if (judged.isSameJudge()) {
                assertThat(judged.again()).isEqualTo(new Again.Same());
            }
        });
    }
}
