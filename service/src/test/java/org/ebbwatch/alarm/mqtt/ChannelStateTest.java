package org.ebbwatch.alarm.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import org.ebbwatch.passage.RackView;
import org.junit.jupiter.api.Test;

class ChannelStateTest {
    private final RackView rack = new OneCellRack().view();

    @Test
    void a_channel_says_what_is_on_it_how_it_does_and_when_it_was_heard() {
        assertThat(ChannelState.json(rack, rack.channels().get(0)))
                .isEqualTo("{\"tag\":\"A-17\",\"phase\":\"DRAIN\",\"findings\":[\"WARMING\"],\"volts\":3.812,"
                        + "\"celsius\":46.5,\"loadApplied\":true,\"time\":\"2026-11-25T12:00:00Z\","
                        + "\"link\":\"CONNECTED\",\"simulated\":true}");
    }

    @Test
    void what_is_not_there_and_not_read_is_null() {
        assertThat(ChannelState.json(rack, rack.channels().get(1)))
                .startsWith("{\"tag\":null,\"phase\":null,\"findings\":[],\"volts\":null,\"celsius\":null,");
    }
}
