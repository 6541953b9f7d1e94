package org.ebbwatch.profile.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ebbwatch.profile.Quantity;
import org.ebbwatch.rig.sensor.VoltageDivider;

/** Reads how a raw number becomes volts, amperes, or what a temperature sensor gives. */
final class QuantityReader {
    /** The keys of every quantity beside those that find its number. */
    static final List<String> KEYS = List.of("unit", "scale", "fullScale", "offset");

    static final Map<String, Double> VOLTS = Map.of("V", 1.0, "mV", 1e-3, "uV", 1e-6);
    static final Map<String, Double> AMPERES = Map.of("A", 1.0, "mA", 1e-3, "uA", 1e-6);

    private static final double MOST = 1e9;
    private static final List<String> DIVIDER_KEYS = List.of("upperOhms", "lowerOhms", "tolerancePercent");

    private final RawSource source;
    private double dividerFraction;

    QuantityReader(RawSource source) {
        this.source = source;
    }

    /** These keys and those that find a number. */
    List<String> keysWith(String... more) {
        List<String> keys = new ArrayList<>(source.keys());
        keys.addAll(KEYS);
        keys.addAll(List.of(more));
        return keys;
    }

    /** Volts, through a divider where there is one. */
    Optional<Quantity> volts(Fields channel) {
        return channel.fields("volts", keysWith("divider")).map(volts -> {
            double factor = volts.fields("divider", DIVIDER_KEYS)
                    .map(this::divider)
                    .map(VoltageDivider::factor)
                    .orElse(1.0);
            return quantity(volts, VOLTS, "V", factor);
        });
    }

    /** Amperes, discharge positive. */
    Optional<Quantity> amperes(Fields channel) {
        return channel.fields("amperes", keysWith()).map(amperes -> quantity(amperes, AMPERES, "A", 1));
    }

    /** The largest expanded uncertainty (k = 2) of any divider read so far, as a fraction. */
    double dividerFraction() {
        return dividerFraction;
    }

    /**
     * One quantity.
     *
     * @param units by their names, each with what it is worth
     * @param usual unit where none is named
     * @param factor of a divider
     */
    Quantity quantity(Fields fields, Map<String, Double> units, String usual, double factor) {
        String unit = fields.choice("unit", units.keySet().stream().sorted().toList(), usual);
        if (fields.has("scale") && fields.has("fullScale")) {
            fields.fault("fullScale", "give scale or fullScale, not both");
        }
        double scale = fields.has("fullScale")
                ? 1 / fields.neededNumber("fullScale", 1, MOST, 1)
                : fields.number("scale", -MOST, MOST, 1);
        if (scale == 0) {
            fields.fault("scale", "scale is not 0: all numbers would be the same");
            scale = 1;
        }
        double worth = units.get(unit) * factor;
        return new Quantity(source.raw(fields), scale * worth, fields.number("offset", -MOST, MOST, 0) * worth);
    }

    private VoltageDivider divider(Fields fields) {
        VoltageDivider divider = new VoltageDivider(
                fields.neededNumber("upperOhms", 0, MOST, 0),
                fields.neededNumber("lowerOhms", 1, MOST, 1),
                fields.number("tolerancePercent", 0, 20, 1) / 100);
        dividerFraction = Math.max(dividerFraction, divider.expandedFraction());
        return divider;
    }
}
