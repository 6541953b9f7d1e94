package org.ebbwatch.rack;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a lithium cell's positive electrode is made of, as far as a rack file tells them apart. */
public enum Chemistry {
    /** Nickel, manganese and cobalt. */
    NMC,
    /** Nickel, cobalt and aluminium. */
    NCA,
    /** Cobalt, as in most pouch cells of phones. */
    LCO,
    /** Manganese spinel. */
    LMO,
    /** Iron phosphate. */
    LFP;

    /** What the judge takes it for. */
    public org.ebbwatch.judge.procedure.Chemistry judged() {
        return this == LFP
                ? org.ebbwatch.judge.procedure.Chemistry.LFP
                : org.ebbwatch.judge.procedure.Chemistry.LAYERED_OXIDE;
    }

    /** Of a full cell: 4.2 V, iron phosphate 3.65 V (common practice, no source). */
    double fullVolts() {
        return this == LFP ? 3.65 : 4.2;
    }

    /** As it is written in a rack file. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The chemistry that is written so; empty where none is. */
    static Optional<Chemistry> ofKey(String key) {
        return Arrays.stream(values())
                .filter(chemistry -> chemistry.key().equals(key))
                .findFirst();
    }
}
