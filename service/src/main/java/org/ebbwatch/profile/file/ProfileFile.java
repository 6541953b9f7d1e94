package org.ebbwatch.profile.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.ebbwatch.profile.BoardProfile;
import org.ebbwatch.profile.modbus.ModbusProfile.Framing;
import org.ebbwatch.rack.Faults;
import org.ebbwatch.rack.RackFileFaulty;
import org.ebbwatch.rack.YamlRoot;

/** A file that says how a device is read. */
public final class ProfileFile {
    private static final List<String> PROTOCOLS = List.of("text", "modbusRtu", "modbusTcp");
    private static final Pattern SERIAL_NUMBER = Pattern.compile("[ -~]{1,32}");

    private ProfileFile() {}

    /**
     * Reads a profile.
     *
     * @throws RackFileFaulty if anything in it is wrong, with all that is
     * @throws IOException if it cannot be read
     */
    public static BoardProfile read(Path file) throws RackFileFaulty, IOException {
        return parse(Files.readString(file), file.toString());
    }

    /**
     * Reads the text of a profile.
     *
     * @param source what to call it in messages
     */
    public static BoardProfile parse(String text, String source) throws RackFileFaulty {
        Faults faults = new Faults(source);
        Set<String> known = new LinkedHashSet<>(TextProfileReader.KEYS);
        known.addAll(ModbusProfileReader.KEYS);
        Fields profile = new Fields(YamlRoot.of(text, "profile", List.copyOf(known), faults), faults);
        String protocol = profile.neededChoice("protocol", PROTOCOLS, "text");
        List<String> fitting = protocol.equals("text") ? TextProfileReader.KEYS : ModbusProfileReader.KEYS;
        known.stream()
                .filter(key -> profile.has(key) && !fitting.contains(key))
                .forEach(key -> profile.fault(key, key + " is not a key of a profile with protocol " + protocol));
        Optional<String> serialNumber = serialNumber(profile);
        BoardProfile read =
                switch (protocol) {
                    case "modbusRtu" -> new ModbusProfileReader(profile, Framing.RTU).read(serialNumber);
                    case "modbusTcp" -> new ModbusProfileReader(profile, Framing.TCP).read(serialNumber);
                    default -> new TextProfileReader(profile).read(serialNumber);
                };
        faults.throwIfAny();
        return read;
    }

    private static Optional<String> serialNumber(Fields profile) {
        String allowed = "serialNumber is 1 to 32 characters of ASCII";
        Optional<String> serialNumber = profile.optionalText("serialNumber", allowed);
        if (serialNumber.isPresent()
                && !SERIAL_NUMBER.matcher(serialNumber.get()).matches()) {
            profile.fault("serialNumber", allowed);
        }
        return serialNumber;
    }
}
