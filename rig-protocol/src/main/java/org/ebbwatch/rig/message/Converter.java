package org.ebbwatch.rig.message;

/**
 * What a board states about its converter. Uncertainties are expanded (k = 2).
 *
 * @param lowestCounts lowest volts count the converter can give, i32
 * @param highestCounts highest volts count, above the lowest
 * @param offsetNanovolts uncertainty of the offset, nanovolts, u32
 * @param gainPartsPerMillion uncertainty of the gain, parts per million of the reading, u32
 * @param celsiusMicrokelvin uncertainty of every temperature, microkelvin, u32
 */
public record Converter(
        int lowestCounts, int highestCounts, long offsetNanovolts, long gainPartsPerMillion, long celsiusMicrokelvin) {
    public Converter {
        if (lowestCounts >= highestCounts) {
            throw new IllegalArgumentException(
                    "lowestCounts is " + lowestCounts + ", allowed is below highestCounts, " + highestCounts);
        }
        Bounds.u32("offsetNanovolts", offsetNanovolts);
        Bounds.u32("gainPartsPerMillion", gainPartsPerMillion);
        Bounds.u32("celsiusMicrokelvin", celsiusMicrokelvin);
    }
}
