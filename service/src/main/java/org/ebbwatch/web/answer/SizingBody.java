package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import org.ebbwatch.sizing.LoadWish;
import org.ebbwatch.sizing.SizingAnswer.Explained;
import org.ebbwatch.sizing.SizingAnswer.Landmark;
import org.ebbwatch.sizing.SizingAnswer.Piece;
import org.ebbwatch.sizing.SizingAnswer.Sized;
import org.ebbwatch.sizing.Touch;

/**
 * A load for a cell or a pack.
 *
 * @param load its resistors and how they are wired, in words
 * @param ohms of the whole
 * @param volts across it in the first moment, as measured at rest
 * @param amperes in the first moment
 * @param watts in the first moment
 * @param ratePerHour share of the rated capacity an hour, in the first moment
 * @param resistors each of them
 * @param wireAwg gauge of the wire, or the one that is enough
 * @param wireVolts lost along the wire in the first moment
 * @param landmarks when 2.5, 0.5 and 0.1 V a cell are reached under the load
 * @param heldWattHours what the whole holds now
 * @param loadWattHours what becomes heat in the load
 * @param cellWattHours what becomes heat inside the cells
 * @param rackWattHours what all on the rack hold
 * @param rackWatts of all loads in the first moment
 * @param roomBears how many at once the room bears, an estimate
 * @param explained every number in words, in the order to be shown
 * @param cautions what to mind, each a sentence or more
 */
@Serdeable
public record SizingBody(
        String load,
        double ohms,
        double volts,
        double amperes,
        double watts,
        double ratePerHour,
        List<ResistorBody> resistors,
        int wireAwg,
        double wireVolts,
        List<LandmarkBody> landmarks,
        double heldWattHours,
        double loadWattHours,
        double cellWattHours,
        double rackWattHours,
        double rackWatts,
        int roomBears,
        List<ExplainedBody> explained,
        List<String> cautions) {

    /** A load as it is told. */
    public static SizingBody of(Sized sized) {
        LoadWish wish = sized.wish();
        return new SizingBody(
                sized.network().words(),
                sized.network().ohms(),
                sized.volts(),
                sized.amperes(),
                sized.watts(),
                sized.perHour(),
                sized.pieces().stream().map(ResistorBody::of).toList(),
                sized.gauge().number(),
                sized.wireVolts(),
                sized.landmarks().stream().map(LandmarkBody::of).toList(),
                sized.heldWattHours(),
                sized.loadWattHours(),
                sized.cellWattHours(),
                wish.cells() * sized.heldWattHours(),
                sized.rackWatts(),
                sized.atOnce(),
                sized.explained().stream().map(ExplainedBody::of).toList(),
                sized.cautions());
    }

    /**
     * One resistor at work.
     *
     * @param ohms of it
     * @param ratedWatts printed on it
     * @param watts it carries in the first moment
     * @param mayCarryWatts where it stands
     * @param celsius of its surface
     * @param touch what that does to skin
     */
    @Serdeable
    public record ResistorBody(
            double ohms, double ratedWatts, double watts, double mayCarryWatts, double celsius, Touch touch) {
        static ResistorBody of(Piece piece) {
            return new ResistorBody(
                    piece.resistor().ohms(),
                    piece.resistor().ratedWatts(),
                    piece.watts(),
                    piece.mayCarryWatts(),
                    piece.celsius(),
                    piece.touch());
        }
    }

    /**
     * When a voltage is reached under the load.
     *
     * @param volts a cell
     * @param hours since the load was put on
     * @param ampereHours taken out by then
     */
    @Serdeable
    public record LandmarkBody(double volts, double hours, double ampereHours) {
        static LandmarkBody of(Landmark landmark) {
            return new LandmarkBody(landmark.volts(), landmark.hours(), landmark.ampereHours());
        }
    }

    /**
     * A number and where it comes from.
     *
     * @param name of what
     * @param value with its unit
     * @param why in a sentence
     */
    @Serdeable
    public record ExplainedBody(String name, String value, String why) {
        static ExplainedBody of(Explained explained) {
            return new ExplainedBody(explained.name(), explained.value(), explained.why());
        }
    }
}
