package org.ebbwatch.web;

import io.micronaut.context.annotation.Primary;
import io.micronaut.context.annotation.Requires;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.ebbwatch.passage.ClosedPassage;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RestPrediction;

/** A rack that shows whatever a test wants; there only where the property {@code invented.rack} is set. */
@Singleton
@Primary
@Requires(property = "invented.rack")
public class InventedRack implements RackSource {
    private volatile RackView view = InventedWorkshop.mixed();
    private volatile boolean broken;

    /** From now on shows this, and works. */
    public void show(RackView now) {
        view = now;
        broken = false;
    }

    /** From now on fails when it is looked at. */
    public void breakDown() {
        broken = true;
    }

    @Override
    public RackView view() {
        if (broken) {
            throw new IllegalStateException("the secret inside of the service");
        }
        return view;
    }

    @Override
    public Optional<RestPrediction> restPrediction(UUID passage) {
        return Optional.empty();
    }

    @Override
    public Optional<List<TracePoint>> trace(UUID passage, Window window, int points) {
        return view.passages().stream()
                .filter(candidate -> candidate.id().equals(passage))
                .findFirst()
                .map(found -> InventedWorkshop.trace(points));
    }

    @Override
    public List<ClosedPassage> closed(Optional<UUID> before, int most) {
        return IntStream.iterate(250, n -> n > 0, n -> n - 1)
                .mapToObj(InventedWorkshop::closed)
                .filter(passage -> before.isEmpty()
                        || passage.card().id().toString().compareTo(before.get().toString()) < 0)
                .limit(most)
                .toList();
    }
}
