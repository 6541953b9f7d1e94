package org.ebbwatch.handover;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ebbwatch.evidence.BundleFacts;
import org.ebbwatch.evidence.json.JsonObject;

/**
 * What a receiver asks of one cell, as far as its bundle knows.
 *
 * @param lastVolts V + U of the last voltage its verdict rests on, rounded up to a millivolt; empty: it rests on none
 * @param restHours how long it rested with the load off the last time; empty: it did not
 */
record HandedCell(BundleFacts facts, Optional<BigDecimal> lastVolts, Optional<BigDecimal> restHours) {
    private static final double MILLIS_PER_HOUR = 3_600_000;
    private static final int DIGEST_DIGITS = 16;

    static HandedCell of(BundleFacts facts) {
        return new HandedCell(facts, lastVolts(facts.record()), restHours(facts.record()));
    }

    private static Optional<BigDecimal> lastVolts(JsonObject record) {
        List<JsonObject> results = record.objects("results");
        if (results.isEmpty()) {
            return Optional.empty();
        }
        JsonObject last = results.get(results.size() - 1);
        return Optional.of(BigDecimal.valueOf(last.decimal("volts") + last.decimal("expandedVolts"))
                .setScale(3, RoundingMode.CEILING));
    }

    private static Optional<BigDecimal> restHours(JsonObject record) {
        Optional<BigDecimal> hours = Optional.empty();
        long from = 0;
        for (JsonObject change : record.objects("phases")) {
            if (change.text("to").equals("REST")) {
                from = change.number("eventMillis");
            } else if (change.text("from").equals("REST")) {
                hours = Optional.of(BigDecimal.valueOf((change.number("eventMillis") - from) / MILLIS_PER_HOUR)
                        .setScale(1, RoundingMode.FLOOR));
            }
        }
        return hours;
    }

    private JsonObject item() {
        return facts.record().object("item");
    }

    private JsonObject outcome() {
        return facts.record().object("outcome");
    }

    String tag() {
        return item().text("tag");
    }

    String chemistry() {
        return item().text("chemistry").toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    double ratedAmpereHours() {
        return item().decimal("ratedAmpereHours");
    }

    boolean isReleased() {
        return outcome().text("phase").equals("RELEASED");
    }

    String phase() {
        return outcome().text("phase");
    }

    boolean isSimulated() {
        return facts.record().truth("simulated");
    }

    BigDecimal wattHoursTaken() {
        return BigDecimal.valueOf(outcome().decimal("wattHours")).setScale(3, RoundingMode.HALF_EVEN);
    }

    double loadOhms() {
        return item().decimal("loadOhms");
    }

    String procedure() {
        JsonObject procedure = facts.record().object("procedure");
        return procedure.text("name") + " " + procedure.number("version");
    }

    /** UTC date of the last entry. */
    String date() {
        return facts.record().object("dates").text("lastEntryUtc").substring(0, 10);
    }

    /** What was noted at check-in under this key; empty where nothing was. */
    String noted(String key) {
        if (item().isNull("intake")) {
            return "";
        }
        Object noted = item().object("intake").map().get(key);
        return noted == null ? "" : noted.toString();
    }

    /** Names this very bundle: the passage, and the first sixteen digits of its manifest's digest. */
    String bundleId() {
        return facts.passage() + "." + facts.manifestSha256().substring(0, DIGEST_DIGITS);
    }

    /** What the square on its label holds. */
    String code() {
        return "EBBWATCH " + bundleId() + " " + tag();
    }
}
