package org.ebbwatch.evidence;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.evidence.Telling.Line;
import org.ebbwatch.evidence.Verdict.Change;
import org.ebbwatch.evidence.Verdict.Found;
import org.ebbwatch.evidence.Verdict.Measured;
import org.ebbwatch.evidence.json.JsonText;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.passage.EntryJson;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.RecordJson;

/**
 * Makes the text of {@code record.json}. What ISO/IEC 17025:2017 7.8.2.1 asks of a report and applies here has its place; what
 * the service cannot know (laboratory, place, customer, who authorises) stands as null for a person to add beside it.
 */
final class RecordWriter {
    static final String PATH = "record.json";
    static final String FORMAT = "ebbwatch record";
    static final int VERSION = 1;
    static final String END = "END OF RECORD ";

    private final PassageRecords records;
    private final PassageCard card;
    private final Origin origin;
    private final Telling telling;
    private final List<String> writtenDown;
    private final Verdict verdict;
    private final Map<String, Object> map = new LinkedHashMap<>();

    private RecordWriter(PassageRecords records, Origin origin, Telling telling) {
        this.records = records;
        this.card = records.card();
        this.origin = origin;
        this.telling = telling;
        this.writtenDown = records.writtenDown();
        this.verdict = telling.verdict();
    }

    /** The record of what was told. */
    static byte[] text(PassageRecords records, Origin origin, Telling telling) {
        return new RecordWriter(records, origin, telling).text();
    }

    private byte[] text() {
        int speed = simulatedSpeed();
        map.put("format", FORMAT);
        map.put("formatVersion", VERSION);
        map.put("title", "Record of one cell emptied through a resistor and tested");
        map.put("passage", card.id().toString());
        map.put("simulated", speed > 0);
        map.put("simulatedSpeed", speed);
        map.put("madeBy", map("software", origin.software(), "judgeVersion", origin.judgeVersion()));
        map.put("laboratory", map("name", null, "address", null, "place", null, "authorisedBy", null));
        map.put("customer", null);
        map.put("item", item());
        map.put("dates", dates());
        map.put("procedure", RecordJson.toMap(card.procedure()));
        map.put("decisionRule", RuleText.of(card.procedure()));
        map.put("uncertainty", CalibrationText.UNCERTAINTY);
        map.put("sensors", CalibrationText.SENSORS);
        map.put(
                "calibrations",
                telling.calibrations().stream().map(CalibrationText::of).toList());
        map.put("outcome", RecordJson.toMap(verdict.end()));
        map.put("results", verdict.results().stream().map(RecordWriter::result).toList());
        map.put("restPeak", telling.restPeak().map(RecordWriter::peak).orElse(null));
        map.put("soak", telling.soak().map(RecordJson::toMap).orElse(null));
        phases();
        findings();
        map.put("gaps", gaps());
        map.put("journal", telling.journal().stream().map(RecordWriter::line).toList());
        map.put("cautions", Cautions.of(records, telling, speed));
        if (!telling.events().equals(writtenDown)) {
            map.put("writtenDown", writtenDown);
        }
        map.put("scope", "The results relate only to the cell named here.");
        map.put("end", END + card.id());
        return JsonText.of(map);
    }

    private int simulatedSpeed() {
        return telling.calibrations().stream()
                .map(calibration -> calibration.board().identity())
                .mapToInt(identity -> identity.simulated() ? identity.speed() : 0)
                .reduce(card.simulatedSpeed(), Math::max);
    }

    private Map<String, Object> item() {
        Map<String, Object> item = RecordJson.toMap(card.cell());
        item.put("board", card.board());
        item.put("channel", card.channel());
        records.intake().ifPresent(intake -> item.put("intake", RecordJson.toMap(intake)));
        return item;
    }

    private Map<String, Object> dates() {
        return map(
                "checkedInUtc",
                WallLabels.rfc3339(card.wallMillis()),
                "checkedInEventMillis",
                card.openedMillis(),
                "lastEntryUtc",
                telling.lastLabel());
    }

    private static Map<String, Object> peak(RestPeak peak) {
        Map<String, Object> map = RecordJson.toMap(peak);
        map.put("below", peak.isBelow());
        return map;
    }

    private static Map<String, Object> result(Measured measured) {
        Map<String, Object> result = RecordJson.toMap(measured);
        result.put("below", measured.isBelow());
        return result;
    }

    private void phases() {
        List<Object> lines = new ArrayList<>();
        for (Change change : verdict.phases()) {
            Map<String, Object> line = RecordJson.toMap(change);
            line.put("wallUtc", telling.phaseLabels().get(lines.size()));
            lines.add(line);
        }
        map.put("phases", lines);
    }

    private void findings() {
        List<Object> lines = new ArrayList<>();
        for (Found found : verdict.findings()) {
            lines.add(map(
                    "sequence",
                    found.sequence(),
                    "eventMillis",
                    found.eventMillis(),
                    "wallUtc",
                    telling.findingLabels().get(lines.size()),
                    "kind",
                    found.kind(),
                    "phase",
                    found.phase(),
                    "line",
                    found.line(),
                    "seen",
                    found.seen(),
                    "limit",
                    found.limit(),
                    "unit",
                    found.unit(),
                    "cleared",
                    found.cleared().map(RecordJson::toMap).orElse(null)));
        }
        map.put("findings", lines);
    }

    private List<Object> gaps() {
        List<Object> gaps = new ArrayList<>();
        for (Line line : telling.journal()) {
            if (line.kept().entry() instanceof Entry.Gap gap) {
                gaps.add(map(
                        "sequence",
                        line.sequence(),
                        "eventMillis",
                        gap.eventMillis(),
                        "wallUtc",
                        line.wallUtc(),
                        "leastMillis",
                        gap.leastMillis(),
                        "mostMillis",
                        gap.mostMillis()));
            }
        }
        return gaps;
    }

    private static Map<String, Object> line(Line line) {
        Entry entry = line.kept().entry();
        return map(
                "sequence",
                line.sequence(),
                "afterReadingEventMillis",
                line.kept().afterScanMillis(),
                "wallUtc",
                line.wallUtc(),
                "kind",
                EntryJson.kind(entry),
                "entry",
                RecordJson.toMap((Record) entry));
    }

    private static Map<String, Object> map(Object... keysAndValues) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) {
            map.put((String) keysAndValues[i], keysAndValues[i + 1]);
        }
        return map;
    }
}
