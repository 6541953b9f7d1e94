package org.ebbwatch.alarm.mqtt;

import org.ebbwatch.alarm.outlet.Outlet;
import org.ebbwatch.alarm.outlet.OutletMessage;

/** Publishes each message at a broker, with quality of service 1. Taken is what the broker says that it has. */
final class MqttOutlet implements Outlet {
    private final String name;
    private final MqttSettings settings;
    private final MqttLink link;

    MqttOutlet(String name, MqttSettings settings, MqttLink link) {
        this.name = name;
        this.settings = settings;
        this.link = link;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Delivery deliver(OutletMessage message) throws InterruptedException {
        String why =
                link.publish(settings.alarmTopic(), message.body(), message.id().toString());
        return why.isEmpty() ? new Taken() : new NotTaken(why);
    }
}
