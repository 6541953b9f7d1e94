package org.ebbwatch.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.UUID;
import org.ebbwatch.archive.Deletion.Deleted;
import org.ebbwatch.evidence.BundleVerifier;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.Origin;
import org.ebbwatch.evidence.PassageRecords;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.evidence.signature.SigningKey;
import org.ebbwatch.judge.Act;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.store.Rows;
import org.ebbwatch.trace.TraceStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One passage between two others on the same channel is deleted. */
class DeletionTest {
    private static final UUID ID = UUID.fromString("01900000-0000-7000-8000-00000000dead");
    private static final long DAY = 86_400_000;

    @TempDir
    Path folder;

    private UUID before;
    private UUID between;
    private UUID after;
    private UUID open;

    @BeforeEach
    void watch() {
        try (var rack = new WorkingRack(folder)) {
            before = passage(rack, "A-1");
            between = passage(rack, "A-2");
            after = passage(rack, "A-3");
            open = rack.checkIn(1, "A-4");
            rack.seconds(1_300, 40_000);
        }
    }

    private static UUID passage(WorkingRack rack, String tag) {
        UUID id = rack.checkIn(0, tag);
        rack.seconds(3_000, 40_000);
        rack.act(id, Act.WITHDRAW);
        rack.seconds(10, 40_000);
        return id;
    }

    private static Deleted delete(StoredRack rack, UUID passage) {
        return new Deletion(rack).delete(ID, passage, "Anna", "the owner asked for it", System.currentTimeMillis());
    }

    private static long count(StoredRack rack, String sql, Object... values) {
        try {
            return Rows.read(rack.database(), sql, row -> row.getLong(1), values)
                    .get(0);
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
    }

    private static long segments(StoredRack rack) {
        return count(rack, "select count(*) from segment where board = 'left' and channel = 0");
    }

    @Test
    void its_rows_and_the_segments_that_are_its_own_are_gone_and_it_is_written_down() {
        try (StoredRack rack = StoredRack.open(folder)) {
            rack.seal();
            long segments = segments(rack);
            Deleted deleted = delete(rack, between);
            assertThat(deleted.tag()).isEqualTo("A-2");
            assertThat(deleted.segments()).isGreaterThanOrEqualTo(3);
            assertThat(segments(rack)).isEqualTo(segments - deleted.segments());
            assertThat(rack.card(between)).isEmpty();
            for (String table : new String[] {"journal", "transition", "finding"}) {
                assertThat(count(rack, "select count(*) from " + table + " where passage_id = ?", between))
                        .as(table)
                        .isZero();
            }
            assertThat(count(
                            rack,
                            "select count(*) from deletion where id = ? and passage_id = ? and who = 'Anna' and segments = ?"
                                    + " and journal_rows = ? and reason = 'the owner asked for it'",
                            ID,
                            between,
                            deleted.segments(),
                            deleted.journalRows()))
                    .isEqualTo(1);
        }
    }

    @Test
    void the_chain_of_the_channel_can_still_be_followed_but_not_over_a_segment_that_went_in_silence()
            throws SQLException {
        try (StoredRack rack = StoredRack.open(folder)) {
            delete(rack, between);
            TraceStore trace = TraceStore.open(rack.database(), folder);
            assertThat(trace.verifyChain("left", 0).faults()).isEmpty();
            try (var connection = rack.database().dataSource().getConnection()) {
                Deletion.execute(
                        connection,
                        "delete from segment where board = 'left' and channel = 0 and first_event_millis ="
                                + " (select min(first_event_millis) from segment where channel = 0 and first_event_millis > 1000000)");
            }
            assertThat(trace.verifyChain("left", 0).faults())
                    .anyMatch(fault -> fault.contains("does not follow from the segment before it"));
            trace.close();
        }
    }

    @Test
    void the_passages_before_and_after_it_verify_as_they_did() throws Exception {
        try (StoredRack rack = StoredRack.open(folder)) {
            delete(rack, between);
            var writer = new BundleWriter(Origin.current(), SigningKey.fresh());
            for (UUID neighbour : new UUID[] {before, after, open}) {
                PassageCard card = rack.card(neighbour).orElseThrow();
                Path bundle = writer.write(
                                PassageRecords.of(rack, card),
                                folder.resolve("bundles-" + card.cell().tag()))
                        .file();
                assertThat(BundleVerifier.verify(bundle))
                        .isInstanceOfSatisfying(Judged.class, judged -> assertThat(judged.again())
                                .isEqualTo(new Again.Same()));
            }
        }
    }

    @Test
    void what_is_not_over_not_there_or_not_explained_is_not_deleted() {
        try (StoredRack rack = StoredRack.open(folder)) {
            assertThatThrownBy(() -> delete(rack, open)).hasMessageContaining("is not over");
            assertThatThrownBy(() -> delete(rack, ID)).hasMessageContaining("there is no passage");
            assertThatThrownBy(() -> new Deletion(rack).delete(ID, before, "Anna", " ", 0))
                    .hasMessageContaining("reason must be said");
            assertThat(count(rack, "select count(*) from deletion")).isZero();
        }
    }

    @Test
    void what_must_be_kept_is_not_deleted_until_its_time_is_over() {
        try (StoredRack rack = StoredRack.open(folder)) {
            var retention = new Retention(rack.database());
            assertThat(retention.days()).isEmpty();
            retention.keepFor(730);
            assertThat(new Retention(rack.database()).days()).hasValue(730);
            assertThat(retention.ended()).extracting("passage").containsExactlyInAnyOrder(before, between, after);
            assertThatThrownBy(() -> delete(rack, between)).hasMessageContaining("must be kept for 730 days");
            long later = System.currentTimeMillis() + 731 * DAY;
            assertThat(new Deletion(rack)
                            .delete(ID, between, "Anna", "time is over", later)
                            .tag())
                    .isEqualTo("A-2");
            assertThatThrownBy(() -> retention.keepFor(0)).hasMessageContaining("1 to 36525");
        }
    }
}
