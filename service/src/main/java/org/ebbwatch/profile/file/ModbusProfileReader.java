package org.ebbwatch.profile.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.ebbwatch.acquire.LineFormat;
import org.ebbwatch.profile.Description;
import org.ebbwatch.profile.ProfiledChannel;
import org.ebbwatch.profile.modbus.LoadCoil;
import org.ebbwatch.profile.modbus.ModbusProfile;
import org.ebbwatch.profile.modbus.NumberType;
import org.ebbwatch.profile.modbus.Register;
import org.ebbwatch.profile.modbus.Spot;
import org.ebbwatch.profile.modbus.Table;
import org.ebbwatch.profile.modbus.WordOrder;
import org.ebbwatch.rig.message.ClockKind;

/** Reads the profile of one or several Modbus devices on one line. */
final class ModbusProfileReader implements RawSource {
    /** Keys of such a profile. */
    static final List<String> KEYS = List.of(
            "protocol",
            "serialNumber",
            "format",
            "intervalMillis",
            "timeoutMillis",
            "retries",
            "mostGap",
            "mostRegisters",
            "hostTimeoutMillis",
            "converter",
            "contacts",
            "channels");

    /** Keys of a bit that is read. */
    private static final List<String> BIT_KEYS = List.of("unitId", Table.COILS.key(), Table.DISCRETE_INPUTS.key());

    private static final List<String> LOAD_KEYS = List.of("unitId", Table.COILS.key(), "sense");
    private static final List<String> REGISTER_KEYS =
            List.of("unitId", Table.HOLDING_REGISTERS.key(), Table.INPUT_REGISTERS.key(), "type", "wordOrder", "open");
    private static final int MOST_CONTACTS = 8;
    private static final int LEAST_INTERVAL_MILLIS = 100;

    private final Fields profile;
    private final ModbusProfile.Framing framing;
    private final List<Register> registers = new ArrayList<>();
    private final Map<Integer, LoadCoil> loads = new TreeMap<>();

    ModbusProfileReader(Fields profile, ModbusProfile.Framing framing) {
        this.profile = profile;
        this.framing = framing;
    }

    ModbusProfile read(Optional<String> serialNumber) {
        ChannelReader reader = new ChannelReader(this);
        List<ProfiledChannel> channels = reader.channels(profile, this::load);
        List<Spot> contacts = profile.list("contacts", "a contact", BIT_KEYS).stream()
                .map(fields -> spot(fields, List.of(Table.DISCRETE_INPUTS, Table.COILS)))
                .toList();
        if (contacts.size() > MOST_CONTACTS) {
            profile.fault("contacts", "contacts are 8 at most");
        }
        int interval = profile.neededWhole("intervalMillis", LEAST_INTERVAL_MILLIS, 60_000, 1_000);
        var description = new Description(
                "Modbus " + framing,
                ClockKind.NONE,
                interval,
                LEAST_INTERVAL_MILLIS,
                60_000,
                reader.converter(profile),
                Math.min(contacts.size(), MOST_CONTACTS),
                profile.whole("hostTimeoutMillis", 0, 3_600_000, 0),
                channels);
        return new ModbusProfile(
                serialNumber,
                description,
                LineFormat.ofKey(profile.choice("format", LineFormat.keys(), "8N1"))
                        .orElseThrow(),
                framing,
                profile.whole("timeoutMillis", 50, 2_000, 300),
                profile.whole("retries", 0, 5, 1),
                profile.whole("mostGap", 0, 124, 0),
                profile.whole("mostRegisters", 2, 125, 125),
                registers,
                loads,
                contacts);
    }

    @Override
    public List<String> keys() {
        return REGISTER_KEYS;
    }

    @Override
    public int raw(Fields fields) {
        Spot at = spot(fields, List.of(Table.HOLDING_REGISTERS, Table.INPUT_REGISTERS));
        NumberType type = NumberType.ofKey(fields.neededChoice("type", NumberType.keys(), "int16"))
                .orElseThrow();
        WordOrder order = fields.choice("wordOrder", List.of("highFirst", "lowFirst"), "highFirst")
                        .equals("lowFirst")
                ? WordOrder.LOW_FIRST
                : WordOrder.HIGH_FIRST;
        registers.add(new Register(at, type, order, fields.optionalNumber("open", -1e12, 1e12)));
        return registers.size() - 1;
    }

    private boolean load(int channel, Fields fields) {
        Optional<Fields> load = fields.fields("load", LOAD_KEYS);
        load.ifPresent(given -> {
            Spot coil = spot(given, List.of(Table.COILS));
            Spot sense = given.fields("sense", BIT_KEYS)
                    .map(bit -> spot(bit, List.of(Table.DISCRETE_INPUTS, Table.COILS)))
                    .orElse(coil);
            boolean twice =
                    loads.values().stream().anyMatch(other -> other.coil().equals(coil));
            if (twice) {
                given.fault(Table.COILS.key(), "the " + coil + " switches another channel's load already");
            }
            loads.put(channel, new LoadCoil(coil, sense));
        });
        return load.isPresent();
    }

    /** One spot, in the one of these tables that the fields name. */
    private static Spot spot(Fields fields, List<Table> tables) {
        List<Table> named =
                tables.stream().filter(table -> fields.has(table.key())).toList();
        if (named.size() != 1) {
            String keys = String.join(" or ", tables.stream().map(Table::key).toList());
            fields.fault("unitId", "say once where it stands, by " + keys + ", with the address as it is sent, from 0");
        }
        Table table = named.isEmpty() ? tables.get(0) : named.get(0);
        int address = named.isEmpty() ? 0 : fields.neededWhole(table.key(), 0, 65_534, 0);
        return new Spot(fields.neededWhole("unitId", 0, 255, 1), table, address);
    }
}
