package org.ebbwatch.passage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.trace.codec.Sha256;

/**
 * A {@link BoardBasis} as text: the {@link IdentityText}, and a line for each thing known beyond it. Where there is none, it is the
 * identity's text alone, as it was before there were any.
 */
public final class BasisText {
    private static final String ROLE = "role";
    private static final String LOAD_SENSOR = "loadSensor";
    private static final String LEADS = "leads";
    private static final String CALIBRATION = "calibration";

    private BasisText() {}

    public static String write(BoardBasis basis) {
        List<String> lines = new ArrayList<>();
        lines.add(IdentityText.write(basis.said()));
        Wiring wiring = basis.wiring();
        wiring.roles().forEach((channel, role) -> lines.add(ROLE + ' ' + channel + ' ' + role.name()));
        wiring.loadSensors().forEach((channel, sensor) -> lines.add(LOAD_SENSOR + ' ' + channel + ' ' + sensor));
        wiring.leadShares().forEach((channel, share) -> lines.add(LEADS + ' ' + channel + ' ' + share));
        basis.calibrations().forEach(each -> lines.add(CALIBRATION + ' ' + RecordJson.write(each)));
        return String.join("\n", lines);
    }

    /** SHA-256 of a calibration as it stands in the text, 64 hexadecimal digits. */
    public static String sha256(Calibration calibration) {
        return Sha256.of(RecordJson.write(calibration)).toString();
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws IllegalArgumentException if it is no such text
     */
    public static BoardBasis read(String text) {
        String[] lines = text.split("\n", -1);
        Map<Integer, ChannelRole> roles = new HashMap<>();
        Map<Integer, Integer> loadSensors = new HashMap<>();
        Map<Integer, Double> leadShares = new HashMap<>();
        List<Calibration> calibrations = new ArrayList<>();
        for (int line = 1; line < lines.length; line++) {
            String[] words = lines[line].split(" ", 3);
            switch (words[0]) {
                case ROLE -> roles.put(Integer.valueOf(words[1]), ChannelRole.valueOf(words[2]));
                case LOAD_SENSOR -> loadSensors.put(Integer.valueOf(words[1]), Integer.valueOf(words[2]));
                case LEADS -> leadShares.put(Integer.valueOf(words[1]), Double.valueOf(words[2]));
                case CALIBRATION ->
                    calibrations.add(
                            RecordJson.read(Calibration.class, lines[line].substring(CALIBRATION.length() + 1)));
                default -> throw new IllegalArgumentException("no basis of readings holds " + words[0]);
            }
        }
        return new BoardBasis(IdentityText.read(lines[0]), new Wiring(roles, loadSensors, leadShares), calibrations);
    }
}
