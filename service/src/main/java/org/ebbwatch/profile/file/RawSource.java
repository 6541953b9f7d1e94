package org.ebbwatch.profile.file;

import java.util.List;

/** Where the raw numbers of a scan come from; protocols differ in the keys by which a number is found. */
interface RawSource {
    /** The keys that find a number. */
    List<String> keys();

    /** Index of the raw number that these fields find; what is wrong with them becomes a fault. */
    int raw(Fields fields);
}
