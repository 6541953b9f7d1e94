package org.ebbwatch.handover;

import java.util.List;

/**
 * What authorities and carriers ask, in general, and where they differ. Shown, not decided: the text in force where the cells are
 * and where they go counts, and so does the receiver's word.
 */
final class Rules {
    static final List<String> HEADS = List.of("Question", "One says", "Another says", "So");

    static final List<List<String>> DIFFERENCES = List.of(
            List.of(
                    "Terminals",
                    "Carriers want every terminal insulated against a short circuit.",
                    "A cell tied off here has its leads bonded: a short on purpose, then insulated.",
                    "Ask the receiver: bonded and insulated, or parted and each terminal insulated."),
            List.of(
                    "Damaged cells, United States",
                    "EPA memo of 24 May 2023 (RO 14957): damaged cells are no universal waste by its reading.",
                    "EPA memo RO 14634: damaged is still universal waste where no cell casing is breached.",
                    "Ask your state and the receiver."),
            List.of(
                    "Which packing, United States",
                    "49 CFR 173.185(d): for disposal or recycling, undamaged.",
                    "49 CFR 173.185(f): damaged, defective or recalled; never (d) for those (PHMSA 24-0050).",
                    "Sort by condition, not by voltage. A cell in doubt is damaged."),
            List.of(
                    "Which packing, ADR",
                    "SP 377, P909: for disposal or recycling.",
                    "SP 376, P908 or LP904: damaged; P911 or LP906 where it may react dangerously.",
                    "The consignor decides, by the condition of each cell."),
            List.of(
                    "Is an emptied cell still a battery?",
                    "PHMSA 24-0034: what holds no charge, no electrolyte and gives no heat is none.",
                    "An emptied cell still holds its electrolyte.",
                    "Take it for UN 3480 or 3481 until an authority says otherwise."),
            List.of(
                    "Keeping it until then",
                    "EU 2023/1542, Annex XII A: impermeable floor, weatherproof cover, away from heat, water and crushing.",
                    "40 CFR 273.14, 273.15 (from memory): label it, and no longer than a year.",
                    "Local fire code and insurer come first."));

    static final List<String> CAUTIONS = List.of(
            "Never charge any of these cells again, and never open one.",
            "A cell that is not released is to be treated as charged and packed by itself; one that is torn, leaking, warm or smelling"
                    + " is no part of this hand-over: keep away, and follow the emergency plan.",
            "This sheet is general. It replaces neither the transport document nor the classification by whoever consigns the cells.");

    private Rules() {}
}
