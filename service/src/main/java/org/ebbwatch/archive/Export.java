package org.ebbwatch.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.ebbwatch.evidence.BundleWriter;
import org.ebbwatch.evidence.PassageRecords;
import org.ebbwatch.evidence.Written;
import org.ebbwatch.evidence.json.JsonText;
import org.ebbwatch.intake.CardedPassages;
import org.ebbwatch.intake.IntakeBook;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.StoredRack;

/**
 * Everything the records hold, as one Data Package in a new folder: the tables as CSV and the bundle of every passage, which has its
 * readings. Receipts, outbox and keys are no part of it.
 */
public final class Export {
    /** Tables and what orders them. */
    private static final Map<String, String> TABLES = tables();

    private Export() {}

    private static Map<String, String> tables() {
        Map<String, String> tables = new LinkedHashMap<>();
        tables.put("passage", "id");
        tables.put("journal", "passage_id, sequence");
        tables.put("transition", "passage_id, sequence");
        tables.put("finding", "passage_id, sequence");
        tables.put("alarm", "id");
        tables.put("alarm_step", "alarm_id, sequence");
        tables.put("evening_check", "id");
        tables.put("evening_check_passage", "check_id, passage_id");
        tables.put("morning_report", "report_day");
        tables.put("service_run", "number");
        tables.put("board_boot", "board, boot, identity_hash");
        tables.put("calibration", "number");
        tables.put("intake", "tag, revision");
        tables.put("intake_photo", "tag, sha256");
        tables.put("retention", "days");
        tables.put("deletion", "id");
        tables.put("deleted_segments", "board, channel, first_event_millis");
        return tables;
    }

    /**
     * Writes everything.
     *
     * @param createdUtc RFC 3339
     * @return how many passages
     * @throws IOException if the folder holds anything already, or something cannot be written
     */
    public static int write(StoredRack rack, BundleWriter bundles, Path folder, String createdUtc) throws IOException {
        if (Files.exists(folder.resolve("datapackage.json"))) {
            throw new IOException(folder + " holds a Data Package already; name a new folder");
        }
        Files.createDirectories(folder);
        rack.seal();
        List<Object> resources = new ArrayList<>();
        try (Connection connection = rack.database().dataSource().getConnection()) {
            for (Map.Entry<String, String> table : TABLES.entrySet()) {
                resources.add(TableExport.write(connection, table.getKey(), table.getValue(), folder));
            }
        } catch (SQLException e) {
            throw new IOException("the tables cannot be read: " + e.getMessage(), e);
        }
        List<PassageCard> cards = rack.cards();
        var passages = new CardedPassages(rack, IntakeBook.of(rack.intakes()));
        for (PassageCard card : cards) {
            Written written = bundles.write(PassageRecords.of(passages, card), folder);
            String name = "bundle-" + card.id().toString().toLowerCase(Locale.ROOT);
            resources.add(ExportedFile.resource(name, written.file(), "zip", "application/zip"));
        }
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("profile", "data-package");
        map.put("name", "ebbwatch-records");
        map.put("title", "Records of cells emptied through resistors");
        map.put("created", createdUtc);
        map.put("resources", resources);
        Files.write(folder.resolve("datapackage.json"), JsonText.of(map));
        return cards.size();
    }
}
