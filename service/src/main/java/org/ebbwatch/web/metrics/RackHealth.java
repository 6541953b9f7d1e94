package org.ebbwatch.web.metrics;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.health.HealthStatus;
import io.micronaut.management.health.indicator.AbstractHealthIndicator;
import io.micronaut.management.health.indicator.annotation.Readiness;
import io.micronaut.serde.annotation.Serdeable;
import jakarta.inject.Singleton;
import java.util.LinkedHashMap;
import java.util.Map;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackView.BoardView;
import org.ebbwatch.web.answer.Freshness;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Whether anything is being watched: DOWN where no board has a connection, be it that there is no board at all. A part of
 * readiness, not of liveness: starting the service again plugs nothing in.
 */
@Singleton
@Readiness
final class RackHealth extends AbstractHealthIndicator<Map<String, RackHealth.BoardHealth>> {
    private static final Logger LOG = LoggerFactory.getLogger(RackHealth.class);

    private final RackSource source;
    private final Freshness freshness;

    RackHealth(RackSource source, Freshness freshness) {
        this.source = source;
        this.freshness = freshness;
    }

    @Override
    protected String getName() {
        return "rack";
    }

    @Override
    protected Map<String, BoardHealth> getHealthInformation() {
        healthStatus = HealthStatus.DOWN;
        Map<String, BoardHealth> boards = new LinkedHashMap<>();
        try {
            for (BoardView board : source.view().boards()) {
                boards.put(board.name(), health(board));
                if (board.link() == LinkState.CONNECTED) {
                    healthStatus = HealthStatus.UP;
                }
            }
        } catch (RuntimeException unseen) {
            LOG.error("the rack cannot be looked at", unseen);
            healthStatus = HealthStatus.DOWN;
        }
        return boards;
    }

    private BoardHealth health(BoardView board) {
        double age = freshness.ageSeconds(board);
        return new BoardHealth(board.link(), board.detail(), Double.isNaN(age) ? null : age, freshness.isStale(board));
    }

    /**
     * One board.
     *
     * @param link how it stands between the service and the board
     * @param detail what is the matter, and what to do about it
     * @param ageSeconds host time since its last scan; null before the first
     * @param stale whether nothing known of it may be taken for the present
     */
    @Serdeable
    record BoardHealth(LinkState link, String detail, @Nullable Double ageSeconds, boolean stale) {}
}
