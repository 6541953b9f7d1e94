package org.ebbwatch.evidence.report;

import java.util.Locale;

/** Names of the record in words. */
final class Words {
    private Words() {}

    /** A key such as {@code massGrams}: mass grams. */
    static String ofKey(String key) {
        return key.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }

    /** A constant such as {@code LAYERED_OXIDE}: layered oxide. */
    static String ofConstant(String constant) {
        return constant.toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
