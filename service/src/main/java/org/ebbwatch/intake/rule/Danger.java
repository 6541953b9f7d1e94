package org.ebbwatch.intake.rule;

/**
 * What hurts people on this job (common practice, no source, but for the figures that name one). Each is told in these words wherever
 * a person meets it: in docs/safety.md, where a cell is taken in, where a load is sized.
 */
public enum Danger {
    /** From a recording of a real pouch cell shorted outside: 120 degrees after 128 s. */
    ONLY_LOOKED_EMPTY(
            "A cell that only looked empty and is tied off is a full short: one a third full was at 120 degrees C within"
                    + " two minutes."),
    CHARGED_AGAIN(
            "Never charge a cell again that has been below about 1 V: copper has gone into solution, and it may short inside"
                    + " while it charges."),
    REVERSED_IN_A_STRING(
            "In a string the weakest cell is empty first, is driven below 0 V by the others and may short inside: watch"
                    + " every cell by its own lead, or take the pack apart."),
    HOT_RESISTOR(
            "A resistor at 60 degrees C burns skin within five seconds, and one that carries its rating is far above that."),
    BOTH_LEADS_CUT(
            "Cut one lead at a time and cover each end at once: both leads in one snip are a dead short through the tool."),
    HYDROGEN_FLUORIDE(
            "What leaks or smokes from a cell makes hydrogen fluoride with moisture: it goes through skin and lungs, and"
                    + " what it does shows late. Keep away, do not breathe it, ask a doctor even if nothing hurts."),
    LEFT_ON_WOOD(
            "Never leave cells overnight on wood, under a shelf or beside anything that burns: a tray that does not burn, the"
                    + " cells apart, nothing above them."),
    PUFFED_POUCH_PIERCED(
            "Never press, bend or pierce a puffed pouch: the gas in it burns, and the layers behind it short.");

    private final String words;

    Danger(String words) {
        this.words = words;
    }

    /** The caution, in sentences. */
    public String words() {
        return words;
    }
}
