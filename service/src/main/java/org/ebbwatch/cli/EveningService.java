package org.ebbwatch.cli;

import io.micronaut.json.tree.JsonNode;
import java.net.URI;
import java.util.Map;
import org.ebbwatch.cli.Ebbwatch.Refusal;

/** A running service, as the evening check asks it. */
final class EveningService {
    private static final String CHECKS = "/api/v1/evening-checks";

    private final ServiceCall service;

    EveningService(URI service, String token) {
        this.service = new ServiceCall(service, token);
    }

    JsonNode start(String by, int touchMinutes) throws Refusal {
        return service.post(CHECKS, Map.of("by", by, "touchMinutes", touchMinutes));
    }

    JsonNode look(String id) throws Refusal {
        return service.get(CHECKS + '/' + id);
    }

    JsonNode heard(String id, String outlet, String by) throws Refusal {
        return service.post(CHECKS + '/' + id + "/steps", Map.of("step", "HEARD", "outlet", outlet, "by", by));
    }

    JsonNode finish(String id) throws Refusal {
        return service.post(CHECKS + '/' + id + "/steps", Map.of("step", "FINISHED"));
    }
}
