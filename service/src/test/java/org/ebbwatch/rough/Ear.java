package org.ebbwatch.rough;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.micronaut.json.JsonMapper;
import io.micronaut.json.tree.JsonNode;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/** A receiver of alarms that never fails, and remembers all it was told. */
final class Ear implements AutoCloseable {
    private final HttpServer server;
    private final Map<UUID, Heard> heard = new ConcurrentHashMap<>();

    /** One message. */
    record Heard(UUID alarm, long sequence, String step, String kind, String subject) {}

    Ear() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", this::take);
        server.start();
    }

    String url() {
        return "http://127.0.0.1:" + server.getAddress().getPort() + "/";
    }

    /** What was heard, by the id of the message. */
    Map<UUID, Heard> heard() {
        return heard;
    }

    private void take(HttpExchange exchange) throws IOException {
        try (exchange) {
            JsonNode message = JsonMapper.createDefault()
                    .readValue(exchange.getRequestBody().readAllBytes(), JsonNode.class);
            heard.put(
                    UUID.fromString(message.get("messageId").getStringValue()),
                    new Heard(
                            UUID.fromString(message.get("alarmId").getStringValue()),
                            message.get("sequence").getLongValue(),
                            message.get("step").getStringValue(),
                            message.get("kind").getStringValue(),
                            message.get("subject").getStringValue()));
            exchange.sendResponseHeaders(204, -1);
        }
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
