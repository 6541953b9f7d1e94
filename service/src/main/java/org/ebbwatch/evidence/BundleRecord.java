package org.ebbwatch.evidence;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ebbwatch.evidence.Verdict.Change;
import org.ebbwatch.evidence.Verdict.Found;
import org.ebbwatch.evidence.Verdict.Measured;
import org.ebbwatch.evidence.Verdict.Moment;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.EntryJson;
import org.ebbwatch.passage.RecordJson;

/**
 * What {@code record.json} says, as far as judging again and telling of it need it. Cell, procedure and entries stay JSON until
 * they are asked for: those of another version of the judge may not be readable by this one.
 */
record BundleRecord(
        UUID passage,
        Origin origin,
        int simulatedSpeed,
        Verdict verdict,
        Optional<Soak> soak,
        Optional<RestPeak> restPeak,
        List<Line> journal,
        List<String> cautions,
        JsonObject item,
        JsonObject procedureText) {

    /** An entry that is no scan. */
    record Line(long sequence, String kind, JsonObject body) {

        /**
         * The entry.
         *
         * @throws IllegalArgumentException if this version knows no such entry
         */
        Entry entry() {
            return EntryJson.fromMap(kind, body.map());
        }
    }

    /**
     * Reads a record.
     *
     * @throws IllegalArgumentException if it is none of this version
     */
    static BundleRecord read(byte[] text) {
        JsonObject json = JsonObject.read(text);
        if (!json.text("format").equals(RecordWriter.FORMAT) || json.number("formatVersion") != RecordWriter.VERSION) {
            throw new IllegalArgumentException("it is no record of version " + RecordWriter.VERSION);
        }
        UUID passage = UUID.fromString(json.text("passage"));
        if (!json.text("end").equals(RecordWriter.END + passage)) {
            throw new IllegalArgumentException("it does not end as a record does");
        }
        JsonObject madeBy = json.object("madeBy");
        return new BundleRecord(
                passage,
                new Origin(madeBy.text("software"), (int) madeBy.number("judgeVersion")),
                json.truth("simulated") ? (int) json.number("simulatedSpeed") : 0,
                verdict(json),
                extreme(json, "soak", Soak.class),
                extreme(json, "restPeak", RestPeak.class),
                json.objects("journal").stream()
                        .map(line -> new Line(line.number("sequence"), line.text("kind"), line.object("entry")))
                        .toList(),
                json.texts("cautions"),
                json.object("item"),
                json.object("procedure"));
    }

    /**
     * The cell.
     *
     * @throws IllegalArgumentException if this version cannot read it
     */
    CellCard cell() {
        return RecordJson.fromMap(CellCard.class, item.map());
    }

    /**
     * The procedure the passage began with.
     *
     * @throws IllegalArgumentException if this version cannot read it
     */
    Procedure procedure() {
        return RecordJson.fromMap(Procedure.class, procedureText.map());
    }

    /** Records made before there was such a thing have none. */
    private static <R extends Record> Optional<R> extreme(JsonObject json, String key, Class<R> type) {
        return json.isNull(key)
                ? Optional.empty()
                : Optional.of(RecordJson.fromMap(type, json.object(key).map()));
    }

    private static Verdict verdict(JsonObject json) {
        return new Verdict(
                json.objects("phases").stream().map(BundleRecord::change).toList(),
                json.objects("findings").stream().map(BundleRecord::found).toList(),
                json.objects("results").stream().map(BundleRecord::measured).toList(),
                RecordJson.fromMap(Verdict.End.class, json.object("outcome").map()));
    }

    private static Change change(JsonObject json) {
        return RecordJson.fromMap(Change.class, json.map());
    }

    private static Measured measured(JsonObject json) {
        return RecordJson.fromMap(Measured.class, json.map());
    }

    private static Found found(JsonObject json) {
        Optional<Moment> cleared = json.isNull("cleared")
                ? Optional.empty()
                : Optional.of(
                        RecordJson.fromMap(Moment.class, json.object("cleared").map()));
        return new Found(
                json.number("sequence"),
                json.text("kind"),
                json.number("eventMillis"),
                json.text("phase"),
                json.decimal("seen"),
                json.decimal("limit"),
                json.text("unit"),
                json.text("line"),
                cleared);
    }
}
