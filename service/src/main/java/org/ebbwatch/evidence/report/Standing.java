package org.ebbwatch.evidence.report;

import java.util.List;

/** What every report says, whatever the record holds. */
final class Standing {
    /** What hurts people afterwards, and what no reading shows. */
    static final List<String> CAUTIONS = List.of(
            "Never charge this cell again: below about 1 V copper goes into solution, and it may short inside.",
            "An emptied cell still holds solvent and salt and is still dangerous goods. Leads that were bonded are a short on purpose;"
                    + " ask the receiver whether terminals must be insulated.",
            "Readings show no damage inside, no swelling, no gas, no cell swapped for one like it and no lead on another cell.",
            "A second pair of eyes, no safety device. Local codes, the receiver's rules and licensed practice come first.");

    static final String ITEMS_TESTED =
            "The results relate only to the items tested: the one cell named on the first page.";

    static final String BY_HAND =
            "Laboratory, address, place of the test, customer and date of issue are not known to the program;"
                    + " whoever hands the report over adds them here:";

    static final String LINES =
            "Laboratory and place ______________________  Customer ______________________  Issued by, date"
                    + " ______________________";

    private Standing() {}
}
