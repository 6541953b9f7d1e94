package org.ebbwatch.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URISyntaxException;
import java.nio.file.Path;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Judged;
import org.junit.jupiter.api.Test;

/** A bundle of an earlier build; see {@code bundles/README.md} among the test resources. */
class GoldenBundleTest {

    @Test
    void a_bundle_written_long_ago_is_still_read_and_its_own_judge_still_makes_its_verdict() throws URISyntaxException {
        Path golden = Path.of(
                GoldenBundleTest.class.getResource("/bundles/judge-1.ebb.zip").toURI());
        Verification verification = BundleVerifier.verify(golden);
        assertThat(verification).isInstanceOf(Judged.class);
        var judged = (Judged) verification;
        assertThat(judged.account().tag()).isEqualTo("golden");
        assertThat(judged.account().judgeVersion()).isEqualTo(1);
        assertThat(judged.account().phase()).isEqualTo("RELEASED");
        if (judged.isSameJudge()) {
            assertThat(judged.again())
                    .as("the judge has changed: raise JudgeVersion.NUMBER by one")
                    .isEqualTo(new Again.Same());
        }
    }
}
