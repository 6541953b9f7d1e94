package org.ebbwatch.alarm.mqtt;

import com.hivemq.client.mqtt.mqtt5.message.publish.Mqtt5PublishResult;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.ebbwatch.passage.RackSource;
import org.ebbwatch.passage.RackView;
import org.ebbwatch.passage.RackView.ChannelView;
import org.ebbwatch.rig.message.ChannelRole;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Publishes what changed on each channel, retained, on a thread of its own. States are no alarms: what a broker did not get is
 * not kept for it; once it is back it gets the present.
 */
final class ChannelAgent implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(ChannelAgent.class);
    private static final long JOIN_MILLIS = 5_000;

    private final MqttSettings settings;
    private final MqttLink link;
    private final RackSource rack;
    private final Duration pause;
    private final Map<String, String> published = new HashMap<>();
    private final List<CompletableFuture<Mqtt5PublishResult>> underWay = new ArrayList<>();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread thread = new Thread(this::work, "mqtt channels");
    private long connection;

    ChannelAgent(MqttSettings settings, MqttLink link, RackSource rack, Duration pause) {
        this.settings = settings;
        this.link = link;
        this.rack = rack;
        this.pause = pause;
    }

    void start() {
        thread.start();
    }

    private void work() {
        try {
            do {
                publish();
            } while (!closing.await(pause.toMillis(), TimeUnit.MILLISECONDS));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void publish() {
        try {
            underWay.removeIf(CompletableFuture::isDone);
            if (!link.isConnected() || !underWay.isEmpty()) {
                return;
            }
            if (connection != link.connections()) {
                connection = link.connections();
                published.clear();
            }
            RackView view = rack.view();
            view.channels().stream()
                    .filter(channel -> channel.role() == ChannelRole.CELL)
                    .forEach(channel -> publish(view, channel));
        } catch (RuntimeException e) {
            LOG.error("The channels cannot be published; going on", e);
        }
    }

    private void publish(RackView view, ChannelView channel) {
        String topic = settings.channelTopic(channel.board(), channel.channel());
        String state = ChannelState.json(view, channel);
        if (!state.equals(published.put(topic, state))) {
            underWay.add(link.begin(topic, state, true, ""));
        }
    }

    @Override
    public void close() {
        closing.countDown();
        try {
            thread.join(JOIN_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
