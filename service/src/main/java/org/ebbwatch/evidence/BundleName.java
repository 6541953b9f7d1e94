package org.ebbwatch.evidence;

import java.text.Normalizer;
import java.util.UUID;

/**
 * The file name of a bundle: the cell's tag as far as every file system takes it, and the last eight digits of the passage's
 * id, which tell passages of one tag apart.
 */
final class BundleName {
    static final String ENDING = ".ebb.zip";

    private static final int TAG_MOST = 40;
    private static final int ID_DIGITS = 8;

    private BundleName() {}

    /** Letters and digits of ASCII and single dashes, a letter or digit first; {@code cell} where the tag has none. */
    static String of(String tag, UUID passage) {
        String plain = Normalizer.normalize(tag, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .replaceAll("[^A-Za-z0-9]+", "-")
                .replaceAll("^-", "");
        String shortened =
                plain.substring(0, Math.min(TAG_MOST, plain.length())).replaceAll("-$", "");
        String id = passage.toString();
        return (shortened.isEmpty() ? "cell" : shortened) + '-' + id.substring(id.length() - ID_DIGITS) + ENDING;
    }
}
