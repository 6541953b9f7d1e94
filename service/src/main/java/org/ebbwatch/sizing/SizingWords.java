package org.ebbwatch.sizing;

import static org.ebbwatch.sizing.Ranges.plain;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.sizing.SizingAnswer.Explained;
import org.ebbwatch.sizing.SizingAnswer.Landmark;
import org.ebbwatch.sizing.SizingAnswer.Piece;
import org.ebbwatch.sizing.SizingAnswer.Sized;

/** The numbers of a load, each with where it comes from. */
final class SizingWords {
    private final Sized sized;
    private final LoadWish wish;
    private final List<Explained> lines = new ArrayList<>();

    private SizingWords(Sized sized) {
        this.sized = sized;
        this.wish = sized.wish();
    }

    static List<Explained> of(Sized sized) {
        var words = new SizingWords(sized);
        words.load();
        words.warmth();
        words.wire();
        words.times();
        words.energy();
        words.room();
        return words.lines;
    }

    private void load() {
        String ohms = plain(sized.network().ohms());
        add("load", sized.network().words(), "together " + ohms + " ohm");
        add(
                "current",
                plain(sized.amperes()) + " A",
                plain(sized.volts()) + " V / " + ohms + " ohm, in the first moment; it only falls from there");
        add(
                "rate",
                "C/" + plain(1 / sized.perHour()),
                plain(wish.ratedAmpereHours()) + " Ah / " + plain(sized.amperes())
                        + " A, in hours; this cell is not emptied faster than C/"
                        + plain(1 / wish.condition().fastestRate().orElseThrow()));
        add(
                "power",
                plain(sized.watts()) + " W",
                plain(sized.volts()) + " V squared / " + ohms + " ohm, in the first moment");
    }

    private void warmth() {
        Piece hardest = sized.hardest();
        add(
                "rating",
                plain(100 * hardest.share()) + " % used",
                plain(hardest.watts()) + " W in the one that works hardest; in air of "
                        + plain(wish.surroundings().airCelsius()) + " degrees "
                        + (wish.surroundings().mounting() == Mounting.HEATSINK
                                ? "on its heatsink"
                                : "without a heatsink")
                        + " it may carry " + plain(hardest.mayCarryWatts()) + " W of its "
                        + plain(hardest.resistor().ratedWatts()) + " W");
        Piece warmest = sized.warmest();
        add(
                "surface",
                plain(Math.rint(warmest.celsius())) + " degrees C",
                "by the slope of its derating curve; " + warmest.touch().words());
    }

    private void wire() {
        add(
                "wire",
                "AWG " + sized.gauge().number() + (wish.surroundings().wire().isPresent() ? "" : " or thicker"),
                "carries " + plain(sized.gauge().mayCarryAmperes()) + " A in a bundle (rule of thumb); "
                        + plain(wish.surroundings().wireMetres()) + " m of it lose " + plain(1000 * sized.wireVolts())
                        + " mV, which is why volts are measured by leads of their own");
    }

    private void times() {
        add(
                "capacity",
                plain(AgedCell.HEALTH * wish.ratedAmpereHours()) + " Ah",
                "what a cell of that rating is taken to hold at the end of its first life, 80 % (common practice, no source);"
                        + " one as good as new takes a quarter longer than told here");
        for (Landmark landmark : sized.landmarks()) {
            add(
                    "to " + plain(landmark.volts()) + " V",
                    time(landmark.hours()),
                    landmark.hours() == 0
                            ? "it is below that already"
                            : plain(landmark.ampereHours()) + " Ah taken out, at " + plain(landmark.volts())
                                    + " V under the load"
                                    + (wish.cellsInSeries() > 1 ? " for each cell, if all are alike" : ""));
        }
        add(
                "then",
                "wait",
                "0.1 V under a load is not empty: charge in material with poor contact comes back for hours and days. The"
                        + " procedure holds the load on, then rests; only a voltage that does not come back counts");
    }

    private void energy() {
        add(
                "energy",
                plain(sized.heldWattHours()) + " Wh",
                "what " + (wish.cellsInSeries() > 1 ? "the pack" : "the cell") + " holds at that voltage: "
                        + plain(sized.loadWattHours()) + " Wh become heat in the load, " + plain(sized.cellWattHours())
                        + " Wh inside " + (wish.cellsInSeries() > 1 ? "its cells" : "it"));
        add(
                "rack",
                plain(wish.cells() * sized.heldWattHours()) + " Wh, " + plain(sized.rackWatts()) + " W",
                (wish.cells() == 1 ? "one of them" : wish.cells() + " of them, all put on at once")
                        + "; the watts are those of the first moment");
    }

    private void room() {
        Room room = wish.surroundings().room();
        add(
                "room",
                sized.atOnce() + " at once",
                "an estimate: " + plain(room.cubicMetres()) + " cubic metres lose " + plain(room.wattsPerKelvin())
                        + " W for each kelvin (" + plain(Room.AIR_CHANGES) + " air changes an hour, "
                        + plain(Room.WALL_LOSS) + " W per square metre and kelvin of wall); so many warm it by "
                        + plain(room.riseKelvin()) + " K in the long run");
    }

    private static String time(double hours) {
        return hours < 48 ? plain(hours) + " h" : plain(hours) + " h (" + plain(hours / 24) + " days)";
    }

    private void add(String name, String value, String why) {
        lines.add(new Explained(name, value, why));
    }
}
