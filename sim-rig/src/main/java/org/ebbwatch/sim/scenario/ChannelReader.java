package org.ebbwatch.sim.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.sim.cell.Arrival;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.Chemistry;
import org.ebbwatch.sim.cell.Relaxation;
import org.ebbwatch.sim.cell.SlowShare;

/** Reads cell channels and what is on them. */
final class ChannelReader {
    private static final Set<String> CHANNEL_KEYS = ScenarioReader.keys(
            "cell",
            "loadOhms",
            "loadTolerancePercent",
            "leadMilliohms",
            "switched",
            "handLoaded",
            "fourWire",
            "repeat");
    private static final Set<String> CELL_KEYS = ScenarioReader.keys(
            "tag",
            "chemistry",
            "ratedAmpereHours",
            "healthPercent",
            "spreadPercent",
            "stateOfChargePercent",
            "milliohms",
            "relaxation",
            "fastMilliohms",
            "fastSeconds",
            "slowMilliohms",
            "slowSeconds",
            "diffusionSeconds",
            "slowSharePercent",
            "slowHours",
            "cutOffVolts",
            "arrival",
            "reversed");
    private static final Map<String, Chemistry> CHEMISTRIES = Map.of("nmc", Chemistry.NMC, "lfp", Chemistry.LFP);
    private static final Map<String, Boolean> RELAXATIONS = Map.of("exponentials", false, "diffusion", true);
    private static final Map<String, Arrival> ARRIVALS =
            Map.of("sound", Arrival.SOUND, "disconnected", Arrival.DISCONNECTED, "dead", Arrival.DEAD);

    private ChannelReader() {}

    static List<ChannelSpec> channels(YamlMap board) throws ScenarioException {
        List<ChannelSpec> channels = new ArrayList<>();
        for (YamlMap map : board.maps("channels", "a channel", node -> CHANNEL_KEYS)) {
            int repeat = (int) map.whole("repeat", 1, 1, BoardSpec.CHANNELS_MOST);
            for (int i = 1; i <= repeat; i++) {
                channels.add(channel(map, repeat == 1 ? "" : "-" + i));
            }
        }
        return channels;
    }

    private static ChannelSpec channel(YamlMap map, String tagEnd) throws ScenarioException {
        Optional<CellSpec> cell =
                map.has("cell") ? Optional.of(cell(map.map("cell", CELL_KEYS), tagEnd)) : Optional.empty();
        double ohms = map.number("loadOhms", 0, 0.01, 1e6);
        double tolerance = map.number("loadTolerancePercent", 1, 0, 50) / 100;
        double leads = map.number("leadMilliohms", 60, 0, 10_000) / 1000;
        boolean handLoaded = map.flag("handLoaded", false);
        boolean switched = map.flag("switched", ohms > 0 && !handLoaded);
        boolean fourWire = map.flag("fourWire", true);
        return map.make(
                () -> new ChannelSpec(ChannelRole.CELL, cell, ohms, tolerance, leads, switched, handLoaded, fourWire));
    }

    private static CellSpec cell(YamlMap map, String tagEnd) throws ScenarioException {
        double rated = map.number("ratedAmpereHours", 0.01, 1000);
        CellSpec.Builder builder = CellSpec.build(map.text("tag") + tagEnd, map.choice("chemistry", CHEMISTRIES), rated)
                .health(map.number("healthPercent", 80, 1, 150) / 100)
                .spread(map.number("spreadPercent", 0, 0, 30) / 100)
                .stateOfCharge(map.number("stateOfChargePercent", 50, -4, 100) / 100)
                .protectionBoard(map.number("cutOffVolts", 0, 0, 4))
                .arrival(map.choice("arrival", ARRIVALS, Arrival.SOUND));
        if (map.has("milliohms")) {
            builder.ohms(map.number("milliohms", 0.01, 100_000) / 1000);
        }
        relax(map, builder);
        if (map.has("slowSharePercent")) {
            builder.slowShare(new SlowShare(
                    map.number("slowSharePercent", 0, 50) / 100,
                    map.number("slowHours", SlowShare.TYPICAL.hours(), 0.2, 1000)));
        } else if (map.has("slowHours")) {
            throw map.wrong("slowHours", "'slowHours' needs 'slowSharePercent'");
        }
        if (map.flag("reversed", false)) {
            builder.reversed();
        }
        return map.make(builder::done);
    }

    private static void relax(YamlMap map, CellSpec.Builder builder) throws ScenarioException {
        boolean diffuses = map.choice("relaxation", RELAXATIONS, false);
        String stray = diffuses ? "slowMilliohms" : "diffusionSeconds";
        if (map.has(stray) || (diffuses && map.has("slowSeconds"))) {
            String key = map.has(stray) ? stray : "slowSeconds";
            throw map.wrong(
                    key, "'" + key + "' does not go with relaxation " + (diffuses ? "diffusion" : "exponentials"));
        }
        Relaxation usual =
                (diffuses ? builder.diffusion() : builder.exponentials()).done().relaxation();
        double fastOhms = map.number("fastMilliohms", usual.fastOhms() * 1000, 0, 1e6) / 1000;
        double fastSeconds = map.number("fastSeconds", usual.fastSeconds(), 0.01, 1e5);
        if (usual instanceof Relaxation.Exponentials exponentials) {
            builder.relaxation(new Relaxation.Exponentials(
                    fastOhms,
                    fastSeconds,
                    map.number("slowMilliohms", exponentials.slowOhms() * 1000, 0, 1e6) / 1000,
                    map.number("slowSeconds", exponentials.slowSeconds(), 0.01, 1e6)));
        } else if (usual instanceof Relaxation.Diffusion diffusion) {
            builder.relaxation(new Relaxation.Diffusion(
                    fastOhms, fastSeconds, map.number("diffusionSeconds", diffusion.diffusionSeconds(), 1, 1e7)));
        }
    }
}
