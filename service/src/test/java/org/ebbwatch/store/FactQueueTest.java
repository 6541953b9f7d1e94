package org.ebbwatch.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.lifecycle.AfterTry;
import net.jqwik.api.lifecycle.BeforeTry;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class FactQueueTest {
    private static final UUID DATABASE = UUID.fromString("0193f0a0-0000-4000-8000-000000000001");

    private Path folder;

    @BeforeTry
    @BeforeEach
    void makeFolder() throws IOException {
        folder = Files.createTempDirectory("ebbwatch-queue-");
    }

    @AfterTry
    @AfterEach
    void removeFolder() throws IOException {
        try (var files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    @Provide
    static Arbitrary<List<Change>> changes() {
        Arbitrary<Object> value = Arbitraries.oneOf(
                Arbitraries.strings().asGeneric(),
                Arbitraries.longs().asGeneric(),
                Arbitraries.integers().asGeneric(),
                Arbitraries.of(true, false).asGeneric(),
                Arbitraries.longs().map(low -> new UUID(7, low)).asGeneric(),
                Arbitraries.just(null));
        return value.array(Object[].class)
                .ofMaxSize(6)
                .map(values -> new Change("insert into somewhere", values))
                .list()
                .ofMaxSize(4);
    }

    @Property(tries = 100)
    void batches_come_back_as_they_were_in_their_order(
            @ForAll("changes") List<Change> first, @ForAll("changes") List<Change> second) throws IOException {
        try (FactQueue queue = FactQueue.open(folder, DATABASE)) {
            queue.add(new FactBatch(7, first));
            queue.add(new FactBatch(8, second));
        }
        assertThat(texts()).containsExactly(text(new FactBatch(7, first)), text(new FactBatch(8, second)));
    }

    @Property(tries = 100)
    void a_torn_end_costs_what_was_not_promised_and_nothing_else(@ForAll @IntRange(min = 0, max = 100_000) int cut)
            throws IOException {
        FactBatch promised = batch(1, "promised");
        Path file = folder.resolve(FactQueue.FILE);
        try (FactQueue queue = FactQueue.open(folder, DATABASE)) {
            queue.add(promised);
        }
        int promisedBytes = (int) Files.size(file);
        try (FactQueue queue = FactQueue.open(folder, DATABASE)) {
            queue.add(batch(2, "cut off"));
        }
        byte[] all = Files.readAllBytes(file);
        int left = promisedBytes + cut % (all.length - promisedBytes);
        Files.write(file, Arrays.copyOf(all, left));

        assertThat(texts()).containsExactly(text(promised));
        try (FactQueue queue = FactQueue.open(folder, DATABASE)) {
            assertThat(queue.tornBytes()).isZero();
            queue.add(batch(2, "said again"));
        }
        assertThat(texts()).containsExactly(text(promised), text(batch(2, "said again")));
        assertThat(Files.exists(folder.resolve("facts.queue.torn"))).isEqualTo(left > promisedBytes);
    }

    @Test
    void a_queue_from_which_all_was_taken_is_empty_when_it_is_opened_again() throws IOException {
        try (FactQueue queue = FactQueue.open(folder, DATABASE)) {
            queue.add(batch(1, "a"));
            queue.add(batch(2, "b"));
            queue.removeFirst();
            assertThat(queue.first().orElseThrow().number()).isEqualTo(2);
            assertThat(queue.lastNumber()).hasValue(2);
            queue.removeFirst();
            assertThat(queue.lastNumber()).isEmpty();
        }
        assertThat(texts()).isEmpty();
    }

    @Test
    void what_waits_for_one_database_never_goes_into_another() throws IOException {
        var other = new UUID(1, 2);
        try (FactQueue queue = FactQueue.open(folder, DATABASE)) {
            queue.add(batch(1, "a"));
        }
        assertThatThrownBy(() -> FactQueue.open(folder, other)).hasMessageContaining("another database");
        try (FactQueue queue = FactQueue.open(folder, DATABASE)) {
            queue.removeFirst();
        }
        FactQueue.open(folder, other).close();
    }

    @Test
    void a_queue_is_open_once() throws IOException {
        try (FactQueue queue = FactQueue.open(folder, DATABASE)) {
            assertThat(queue.size()).isZero();
            assertThatThrownBy(() -> FactQueue.open(folder, DATABASE)).isInstanceOf(StorageException.class);
        }
    }

    @Test
    void a_file_of_something_else_is_left_alone() throws IOException {
        Path file = folder.resolve(FactQueue.FILE);
        Files.writeString(file, "something else, and quite long at that");

        assertThatThrownBy(() -> FactQueue.open(folder, DATABASE)).hasMessageContaining("not written by this version");
        assertThat(file).hasContent("something else, and quite long at that");
    }

    private static FactBatch batch(long number, String text) {
        return new FactBatch(number, List.of(new Change("insert into somewhere", new Object[] {text, number})));
    }

    private List<String> texts() throws IOException {
        List<String> texts = new ArrayList<>();
        try (FactQueue queue = FactQueue.open(folder, DATABASE)) {
            for (FactBatch batch : queue.batches()) {
                texts.add(text(batch));
            }
        }
        return texts;
    }

    private static String text(FactBatch batch) {
        return batch.number() + " " + batch.changes();
    }
}
