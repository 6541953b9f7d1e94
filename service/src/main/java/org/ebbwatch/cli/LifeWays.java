package org.ebbwatch.cli;

import java.net.URI;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.acquire.SystemHostClock;
import org.ebbwatch.alarm.outlet.WebhookSettings;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.life.LifeAgent;
import org.ebbwatch.life.LifeReceiver;
import org.ebbwatch.passage.RackWatch;
import org.ebbwatch.rack.LifeEntry;
import org.ebbwatch.rack.RunningRack;

/** Makes of what a rack file says of signs of life the one who gives them. */
final class LifeWays {
    private LifeWays() {}

    /**
     * An agent that has not begun.
     *
     * @throws Refusal if the environment lacks the address, or holds one that cannot be used
     */
    static LifeAgent agent(RunningRack rack, Optional<LifeEntry> entry, Map<String, String> environment)
            throws Refusal {
        Optional<LifeReceiver> receiver =
                entry.isPresent() ? Optional.of(receiver(entry.get(), environment)) : Optional.empty();
        return new LifeAgent(() -> rack.with(RackWatch::pulses), new SystemHostClock(), receiver, environment);
    }

    static LifeReceiver receiver(LifeEntry entry, Map<String, String> environment) throws Refusal {
        String variable = entry.urlEnvironment().orElse("");
        String address = entry.url().orElseGet(() -> environment.getOrDefault(variable, ""));
        if (address.isBlank()) {
            throw new Refusal("the environment holds no " + variable + ", which signOfLife of the rack file needs");
        }
        try {
            WebhookSettings.checkAddress(address);
            return new LifeReceiver(URI.create(address), entry.post(), Duration.ofMinutes(entry.everyMinutes()));
        } catch (IllegalArgumentException e) {
            throw new Refusal(
                    "the address of signOfLife cannot be used: it begins with http:// or https:// and a host");
        }
    }
}
