package org.ebbwatch.profile.modbus;

/**
 * One register or bit of one unit.
 *
 * @param unitId 1 to 247; 0 and 255 too where a TCP device wants them
 * @param table which of the four
 * @param address 0 to 65535, as it stands in the request
 */
public record Spot(int unitId, Table table, int address) {
    public Spot {
        if (unitId < 0 || unitId > 255) {
            throw new IllegalArgumentException("unitId must be 0 to 255, not " + unitId);
        }
        if (address < 0 || address > 0xFFFF) {
            throw new IllegalArgumentException("address must be 0 to 65535, not " + address);
        }
    }

    @Override
    public String toString() {
        return table.key() + " " + address + " of unit " + unitId;
    }
}
