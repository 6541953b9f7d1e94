package org.ebbwatch.handover;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.ebbwatch.csv.CsvWriter;

/** The cells of a hand-over as a table, a line each; columns that only people can fill are there and empty. */
final class CellTable {
    static final String FILE = "hand-over.csv";

    static final List<String> COLUMNS = List.of(
            "tag",
            "bundle_id",
            "bundle_file",
            "chemistry",
            "form",
            "maker_model",
            "rated_ampere_hours",
            "mass_grams",
            "condition",
            "discharged",
            "method",
            "load_ohms",
            "watt_hours_taken_out",
            "last_volts_plus_uncertainty",
            "rest_hours",
            "verdict_date_utc",
            "simulated",
            "terminals_insulated",
            "un_number",
            "waste_code",
            "packing_instruction");

    private CellTable() {}

    static void write(List<HandedCell> cells, Path folder) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(folder.resolve(FILE)))) {
            var csv = new CsvWriter(out);
            csv.line(COLUMNS);
            for (HandedCell cell : cells) {
                csv.line(fields(cell));
            }
        }
    }

    private static List<Object> fields(HandedCell cell) {
        return Arrays.asList(
                cell.tag(),
                cell.bundleId(),
                cell.facts().file().getFileName(),
                cell.chemistry(),
                "",
                "",
                cell.ratedAmpereHours(),
                cell.noted("massGrams"),
                cell.noted("condition"),
                cell.isReleased() ? "yes" : "no, " + cell.phase(),
                "resistor, procedure " + cell.procedure(),
                cell.loadOhms(),
                cell.wattHoursTaken(),
                cell.lastVolts().orElse(null),
                cell.restHours().orElse(null),
                cell.date(),
                cell.isSimulated(),
                "",
                "",
                "",
                "");
    }
}
