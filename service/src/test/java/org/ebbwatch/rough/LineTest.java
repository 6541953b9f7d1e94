package org.ebbwatch.rough;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the link campaign. */
class LineTest {
    private static final long MILLIS = 8_000;

    @TempDir
    Path folder;

    @Test
    void no_line_however_bad_makes_a_wrong_reading_or_a_wrong_finding() throws Exception {
        List<LineCase> cases = LineCase.all(1, 3_000);
        ExecutorService racks = Executors.newCachedThreadPool();
        try {
            List<Future<LineCase.Result>> results = IntStream.range(0, cases.size())
                    .mapToObj(i -> racks.submit(() -> cases.get(i).run(folder.resolve("line" + i), MILLIS)))
                    .toList();
            for (Future<LineCase.Result> result : results) {
                System.out.println(result.get().line().name() + " " + result.get().sent() + " " + result.get().kept() + " " + result.get().found()+result.get().alarms());
            }
            for (Future<LineCase.Result> result : results) {
                assertThat(result.get().trouble().found()).isEmpty();
            }
        } finally {
            racks.shutdown();
        }
    }
}
