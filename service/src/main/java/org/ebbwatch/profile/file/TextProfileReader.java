package org.ebbwatch.profile.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.ebbwatch.acquire.LineFormat;
import org.ebbwatch.profile.Description;
import org.ebbwatch.profile.ProfiledChannel;
import org.ebbwatch.profile.text.Column;
import org.ebbwatch.profile.text.DecimalMark;
import org.ebbwatch.profile.text.Separator;
import org.ebbwatch.profile.text.TextProfile;
import org.ebbwatch.rig.message.ClockKind;

/** Reads the profile of a device that prints lines. */
final class TextProfileReader implements RawSource {
    /** Keys of such a profile. */
    static final List<String> KEYS = List.of(
            "protocol",
            "serialNumber",
            "format",
            "intervalMillis",
            "separator",
            "decimal",
            "columns",
            "clock",
            "converter",
            "channels");

    private static final String UNUSED = "-";
    private static final List<String> COLUMN_KEYS = List.of("column", "form", "decimals", "open");

    private final Fields profile;
    private final List<String> columns;
    private final List<Column> used = new ArrayList<>();

    TextProfileReader(Fields profile) {
        this.profile = profile;
        this.columns = profile.words("columns", "a column is named by a word, one that is not used by " + UNUSED);
    }

    TextProfile read(Optional<String> serialNumber) {
        Separator separator = Separator.ofKey(profile.choice("separator", Separator.keys(), "comma"))
                .orElseThrow();
        DecimalMark decimal =
                profile.choice("decimal", List.of("point", "comma"), "point").equals("comma")
                        ? DecimalMark.COMMA
                        : DecimalMark.POINT;
        if (separator == Separator.COMMA && decimal == DecimalMark.COMMA) {
            profile.fault("decimal", "decimal is not comma where the separator is: nobody could tell them apart");
            decimal = DecimalMark.POINT;
        }
        refuseTwice();
        Optional<String> clock = profile.optionalText("clock", "clock names the column of the device's milliseconds");
        clock.ifPresent(name -> requireColumn(profile, "clock", name));
        ChannelReader reader = new ChannelReader(this);
        List<ProfiledChannel> channels = reader.channels(profile, (channel, fields) -> {
            if (fields.has("load")) {
                fields.fault("load", "a device that only prints switches no load; leave load out");
            }
            return false;
        });
        long interval = profile.neededWhole("intervalMillis", 100, 60_000, 1_000);
        var description = new Description(
                "text lines",
                clock.isPresent() ? ClockKind.RESONATOR : ClockKind.NONE,
                interval,
                interval,
                interval,
                reader.converter(profile),
                0,
                0,
                channels);
        return new TextProfile(
                serialNumber,
                description,
                LineFormat.ofKey(profile.choice("format", LineFormat.keys(), "8N1"))
                        .orElseThrow(),
                separator,
                decimal,
                columns,
                clock,
                used.isEmpty() ? List.of(placeholder()) : used);
    }

    @Override
    public List<String> keys() {
        return COLUMN_KEYS;
    }

    @Override
    public int raw(Fields fields) {
        String name = fields.text("column", "column names a column").orElse(UNUSED);
        requireColumn(fields, "column", name);
        var form = fields.choice("form", List.of("decimal", "scratchpad"), "decimal")
                        .equals("decimal")
                ? Column.Form.DECIMAL
                : Column.Form.SCRATCHPAD;
        used.add(new Column(
                name, form, fields.optionalWhole("decimals", 0, 9), fields.optionalNumber("open", -1e9, 1e9)));
        return used.size() - 1;
    }

    private void requireColumn(Fields fields, String key, String name) {
        if (!columns.isEmpty() && fields.has(key) && (!columns.contains(name) || name.equals(UNUSED))) {
            fields.fault(key, key + " \"" + name + "\" is none of the columns " + String.join(", ", columns));
        }
    }

    private void refuseTwice() {
        columns.stream()
                .filter(name -> !name.equals(UNUSED))
                .filter(name -> columns.indexOf(name) != columns.lastIndexOf(name))
                .distinct()
                .forEach(name -> profile.fault("columns", "the column " + name + " is named twice"));
    }

    /** Stands for the columns of a profile without channels, which is a fault already. */
    private static Column placeholder() {
        return new Column(UNUSED, Column.Form.DECIMAL, OptionalInt.empty(), OptionalDouble.empty());
    }
}
