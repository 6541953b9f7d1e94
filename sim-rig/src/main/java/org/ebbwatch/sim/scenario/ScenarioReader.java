package org.ebbwatch.sim.scenario;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ebbwatch.sim.fault.Fault;
import org.ebbwatch.sim.fault.FaultKind;
import org.ebbwatch.sim.fault.FaultParameter;
import org.ebbwatch.sim.fault.Happening;
import org.ebbwatch.sim.fault.Trigger;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads scenario, boards, strings and faults; {@link ChannelReader} reads channels and cells. */
final class ScenarioReader {
    private static final Set<String> SCENARIO_KEYS = keys("seed", "speed", "interval", "boards");
    private static final Set<String> BOARD_KEYS = keys(
            "serialNumber",
            "firmware",
            "bootNumber",
            "hostTimeout",
            "measuresAmperes",
            "checksLeads",
            "buzzer",
            "loadRelay",
            "contactInputs",
            "ambientSensor",
            "dummy",
            "watches",
            "bank",
            "converter",
            "ambient",
            "channels",
            "strings",
            "faults");
    private static final Set<String> CONVERTER_KEYS = keys(
            "unipolar",
            "voltsNoiseCounts",
            "celsiusNoiseCounts",
            "offsetMicrovolts",
            "gainPartsPerMillion",
            "celsiusKelvin");
    private static final Set<String> AMBIENT_KEYS = keys("celsius", "swingKelvin", "startHour");
    private static final Set<String> STRING_KEYS = keys("firstChannel", "cells", "loadOhms", "switched");
    private static final Set<String> FAULT_KEYS =
            keys("kind", "channel", "at", "after", "offset", "occurrence", "lasts");

    private ScenarioReader() {}

    static Set<String> keys(String... names) {
        return new LinkedHashSet<>(List.of(names));
    }

    static Scenario read(String yaml, String source) throws ScenarioException {
        YamlMap root = new YamlMap(source, compose(yaml, source), "the scenario", SCENARIO_KEYS);
        List<BoardSpec> boards = new ArrayList<>();
        for (YamlMap board : root.maps("boards", "a board", node -> BOARD_KEYS)) {
            boards.add(board(board));
        }
        if (boards.isEmpty()) {
            throw root.wrong("boards", "'boards' must list at least one board");
        }
        long seed = root.whole("seed", 1, Long.MIN_VALUE, Long.MAX_VALUE);
        int speed = (int) root.whole("speed", 1, 1, 65_535);
        long interval = root.millis("interval", 1_000);
        return root.make(() -> new Scenario(seed, speed, interval, boards));
    }

    private static Node compose(String yaml, String source) throws ScenarioException {
        try {
            return new Compose(LoadSettings.builder().setLabel(source).build())
                    .composeString(yaml)
                    .orElseThrow(() -> new ScenarioException(source + ":1: the file is empty"));
        } catch (MarkedYamlEngineException e) {
            int line = e.getProblemMark().map(mark -> mark.getLine() + 1).orElse(1);
            throw new ScenarioException(source + ":" + line + ": not YAML: " + e.getProblem(), e);
        } catch (YamlEngineException e) {
            throw new ScenarioException(source + ":1: not YAML: " + e.getMessage(), e);
        }
    }

    private static BoardSpec board(YamlMap board) throws ScenarioException {
        List<ChannelSpec> channels = board.has("channels") ? ChannelReader.channels(board) : UsualRack.channels();
        BoardSpec.Builder builder = BoardSpec.build(board.text("serialNumber"), channels)
                .firmware(board.text("firmware", "sim-rig 1"))
                .bootNumber(board.whole("bootNumber", 1, 1, 0xFFFF_FFFFL))
                .hostTimeoutMillis(board.millis("hostTimeout", 30_000))
                .measuresAmperes(board.flag("measuresAmperes", false))
                .checksLeads(board.flag("checksLeads", true))
                .buzzer(board.flag("buzzer", true))
                .loadRelay(board.flag("loadRelay", true))
                .contactInputs((int) board.whole("contactInputs", 0, 0, 8))
                .thermometers(
                        board.flag("ambientSensor", true),
                        board.flag("dummy", true),
                        (int) board.whole("watches", 0, 0, 32),
                        board.flag("bank", true));
        if (board.has("converter")) {
            builder.converter(converter(board.map("converter", CONVERTER_KEYS)));
        }
        if (board.has("ambient")) {
            builder.ambient(ambient(board.map("ambient", AMBIENT_KEYS)));
        }
        builder.strings(strings(board)).faults(faults(board));
        return board.make(builder::done);
    }

    private static ConverterSpec converter(YamlMap map) throws ScenarioException {
        ConverterSpec usual = ConverterSpec.USUAL;
        return new ConverterSpec(
                map.flag("unipolar", usual.unipolar()),
                map.number("voltsNoiseCounts", usual.voltsNoiseCounts(), 0, 1000),
                map.number("celsiusNoiseCounts", usual.celsiusNoiseCounts(), 0, 1000),
                map.number("offsetMicrovolts", usual.offsetMicrovolts(), 0, 100_000),
                map.number("gainPartsPerMillion", usual.gainPartsPerMillion(), 0, 100_000),
                map.number("celsiusKelvin", usual.celsiusKelvin(), 0, 10));
    }

    private static AmbientSpec ambient(YamlMap map) throws ScenarioException {
        AmbientSpec usual = AmbientSpec.USUAL;
        return new AmbientSpec(
                map.number("celsius", usual.celsius(), -20, 50),
                map.number("swingKelvin", usual.swingKelvin(), 0, 40),
                map.number("startHour", usual.startHour(), 0, 24));
    }

    private static List<StringSpec> strings(YamlMap board) throws ScenarioException {
        List<StringSpec> strings = new ArrayList<>();
        for (YamlMap map : board.maps("strings", "a string", node -> STRING_KEYS)) {
            map.text("firstChannel");
            strings.add(new StringSpec(
                    (int) map.whole("firstChannel", 0, 0, 63),
                    (int) map.whole("cells", 2, 2, 64),
                    map.number("loadOhms", 0.01, 1e6),
                    map.flag("switched", true)));
        }
        return strings;
    }

    private static List<Fault> faults(YamlMap board) throws ScenarioException {
        List<Fault> faults = new ArrayList<>();
        for (YamlMap map : board.maps("faults", "a fault", ScenarioReader::faultKeys)) {
            faults.add(fault(map));
        }
        return faults;
    }

    private static Set<String> faultKeys(Node node) {
        Set<String> keys = new LinkedHashSet<>(FAULT_KEYS);
        FaultKind.named(YamlMap.peek(node, "kind"))
                .ifPresent(kind -> kind.parameters().forEach(parameter -> keys.add(parameter.name())));
        return keys;
    }

    private static Fault fault(YamlMap map) throws ScenarioException {
        Map<String, FaultKind> kinds = new LinkedHashMap<>();
        for (FaultKind kind : FaultKind.values()) {
            kinds.put(kind.scenarioName(), kind);
        }
        FaultKind kind = map.choice("kind", kinds);
        Map<String, Double> strengths = new LinkedHashMap<>();
        for (FaultParameter parameter : kind.parameters()) {
            if (map.has(parameter.name())) {
                strengths.put(parameter.name(), map.number(parameter.name(), parameter.lowest(), parameter.highest()));
            }
        }
        int channel = map.has("channel") ? (int) map.whole("channel", 0, 0, BoardSpec.CHANNELS_MOST - 1) : Fault.BOARD;
        Trigger trigger = trigger(map);
        long lasts = map.millis("lasts", Fault.FOR_EVER);
        return map.make(() -> new Fault(kind, channel, trigger, lasts, strengths));
    }

    private static Trigger trigger(YamlMap map) throws ScenarioException {
        if (map.has("at") == map.has("after")) {
            throw map.wrong(
                    "after", "a fault needs either 'at' (a time from the start) or 'after' (something that happens)");
        }
        if (map.has("at")) {
            if (map.has("offset") || map.has("occurrence")) {
                throw map.wrong("at", "'offset' and 'occurrence' go with 'after', not with 'at'");
            }
            return Trigger.at(map.millis("at"));
        }
        Map<String, Happening> happenings = new LinkedHashMap<>();
        happenings.put("loadClosed", Happening.LOAD_CLOSED);
        happenings.put("loadOpened", Happening.LOAD_OPENED);
        happenings.put("bonded", Happening.BONDED);
        happenings.put("parted", Happening.PARTED);
        return new Trigger(
                map.choice("after", happenings), (int) map.whole("occurrence", 1, 1, 1000), map.millis("offset", 0));
    }
}
