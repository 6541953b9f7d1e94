package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.ebbwatch.intake.IntakeRecord;
import org.ebbwatch.intake.IntakeRecord.Revision;
import org.ebbwatch.intake.rule.CellChemistry;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.IntakeFields;
import org.ebbwatch.intake.rule.Objection;
import org.ebbwatch.intake.rule.ProtectionBoard;
import org.ebbwatch.intake.rule.Triage;

/**
 * A cell's card.
 *
 * @param tag of the cell
 * @param verdict whether it may go onto the rack as the card stands
 * @param objections why not; empty where it may
 * @param cautions what to mind, on the rack or off it
 * @param photoUrl where its photo is; null where there is none
 * @param card what the card says now
 * @param revisions what it said from when on, the first one first
 */
@Serdeable
public record IntakeAnswer(
        String tag,
        Triage.Verdict verdict,
        List<ObjectionAnswer> objections,
        List<String> cautions,
        @Nullable String photoUrl,
        CardAnswer card,
        List<RevisionAnswer> revisions) {

    /** A card as it is told. */
    public static IntakeAnswer of(IntakeRecord record) {
        Triage triage = record.triage();
        return new IntakeAnswer(
                record.tag(),
                triage.verdict(),
                triage.objections().stream().map(ObjectionAnswer::of).toList(),
                triage.cautions(),
                record.photo().isPresent() ? "/api/v1/intakes/" + inPath(record.tag()) + "/photo" : null,
                CardAnswer.of(record.card()),
                record.revisions().stream().map(RevisionAnswer::of).toList());
    }

    /** A tag holds letters, digits, spaces, points, dashes and underscores alone; RFC 3986 wants most of that encoded. */
    public static String inPath(String tag) {
        return URLEncoder.encode(tag, StandardCharsets.UTF_8).replace("+", "%20");
    }

    /**
     * Why it may not.
     *
     * @param why what is the matter
     * @param toDo what to do
     * @param forGood whether nothing that is written later lifts it
     */
    @Serdeable
    public record ObjectionAnswer(String why, String toDo, boolean forGood) {
        static ObjectionAnswer of(Objection objection) {
            return new ObjectionAnswer(objection.why(), objection.toDo(), objection.isForGood());
        }
    }

    /**
     * What a card says.
     *
     * @param chemistry of the cell
     * @param cellsInSeries 1 for a single cell
     * @param ratedAmpereHours of one cell
     * @param origin where it came from
     * @param condition how it looks, smells and feels
     * @param protectionBoard whether one is in front of it
     * @param measuredVolts at rest, across the whole
     * @param voltsExplained why volts that do not fit are right
     * @param massBeforeGrams as it came
     * @param massAfterGrams when it was emptied
     * @param thicknessBeforeMillimetres as it came
     * @param thicknessAfterMillimetres when it was emptied
     * @param note whatever else
     * @param photoSha256 of the photo as it is kept
     */
    @Serdeable
    public record CardAnswer(
            @Nullable String chemistry,
            @Nullable Integer cellsInSeries,
            @Nullable Double ratedAmpereHours,
            @Nullable String origin,
            @Nullable Condition condition,
            @Nullable ProtectionBoard protectionBoard,
            @Nullable Double measuredVolts,
            @Nullable String voltsExplained,
            @Nullable Double massBeforeGrams,
            @Nullable Double massAfterGrams,
            @Nullable Double thicknessBeforeMillimetres,
            @Nullable Double thicknessAfterMillimetres,
            @Nullable String note,
            @Nullable String photoSha256) {
        static CardAnswer of(IntakeFields card) {
            return new CardAnswer(
                    card.chemistry().map(CellChemistry::key).orElse(null),
                    card.cellsInSeries().orElse(null),
                    card.ratedAmpereHours().orElse(null),
                    card.origin().orElse(null),
                    card.condition().orElse(null),
                    card.protectionBoard().orElse(null),
                    card.measuredVolts().orElse(null),
                    card.voltsExplained().orElse(null),
                    card.massBeforeGrams().orElse(null),
                    card.massAfterGrams().orElse(null),
                    card.thicknessBeforeMillimetres().orElse(null),
                    card.thicknessAfterMillimetres().orElse(null),
                    card.note().orElse(null),
                    card.photo().orElse(null));
        }
    }

    /**
     * What was written at one time.
     *
     * @param number from 1
     * @param at when, RFC 3339 in UTC
     * @param by who
     * @param reason why something was overwritten; empty where nothing was
     * @param card what the card said from then on
     */
    @Serdeable
    public record RevisionAnswer(int number, @Nullable String at, String by, String reason, CardAnswer card) {
        static RevisionAnswer of(Revision revision) {
            return new RevisionAnswer(
                    revision.number(),
                    Figures.wallTime(revision.wallMillis()),
                    revision.by(),
                    revision.reason(),
                    CardAnswer.of(revision.card()));
        }
    }
}
