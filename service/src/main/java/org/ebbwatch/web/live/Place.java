package org.ebbwatch.web.live;

import io.micronaut.serde.annotation.Serdeable;

/**
 * Where a listener stands.
 *
 * @param number everything after this one follows
 */
@Serdeable
record Place(long number) {}
