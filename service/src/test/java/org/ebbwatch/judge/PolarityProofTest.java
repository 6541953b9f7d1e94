package org.ebbwatch.judge;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PolarityProofTest {
    private final PolarityProof proof = new PolarityProof();

    @Test
    void takes_ten_seconds_on_end() {
        proof.follow(5_000, true);
        proof.follow(14_999, true);
        assertThat(proof.isProven()).isFalse();

        proof.follow(15_000, true);

        assertThat(proof.isProven()).isTrue();
    }

    @Test
    void begins_again_after_a_reading_below() {
        proof.follow(0, true);
        proof.follow(9_000, false);
        proof.follow(10_000, true);
        proof.follow(19_999, true);

        assertThat(proof.isProven()).isFalse();
    }

    @Test
    void begins_again_after_a_stretch_nobody_watched_but_what_was_proven_stays() {
        proof.follow(0, true);
        proof.interrupt();
        proof.follow(10_000, true);
        assertThat(proof.isProven()).isFalse();

        proof.follow(20_000, true);
        proof.interrupt();

        assertThat(proof.isProven()).isTrue();
    }

    @Test
    void once_revoked_takes_ten_seconds_anew() {
        proof.follow(0, true);
        proof.follow(10_000, true);
        proof.revoke();
        proof.follow(11_000, true);
        assertThat(proof.isProven()).isFalse();

        proof.follow(21_000, true);

        assertThat(proof.isProven()).isTrue();
    }
}
