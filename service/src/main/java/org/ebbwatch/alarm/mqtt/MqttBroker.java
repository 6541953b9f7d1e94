package org.ebbwatch.alarm.mqtt;

import java.time.Duration;
import java.util.Optional;
import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.passage.RackSource;

/** A broker that is told of alarms and of what stands on each channel, from {@link #start} to {@link #close}. */
public final class MqttBroker implements AutoCloseable {
    private final MqttSettings settings;
    private final MqttLink link;
    private Optional<ChannelAgent> channels = Optional.empty();

    public MqttBroker(MqttSettings settings) {
        this.settings = settings;
        this.link = new MqttLink(settings);
    }

    /** The way by which alarms get there; its messages are kept under that name. */
    public Outlet outlet(String name) {
        return new MqttOutlet(name, settings, link);
    }

    /**
     * Begins to connect and to publish; waits for nothing. Once.
     *
     * @param pause between two looks at the channels
     */
    public void start(RackSource rack, Duration pause) {
        link.open();
        var agent = new ChannelAgent(settings, link, rack, pause);
        agent.start();
        channels = Optional.of(agent);
    }

    @Override
    public void close() {
        channels.ifPresent(ChannelAgent::close);
        link.close();
    }
}
