package org.ebbwatch.web.answer;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.serde.annotation.Serdeable;
import java.util.List;

/**
 * A page of cards, the one taken in last first.
 *
 * @param intakes at most as many as were asked for
 * @param next what to ask for as before to get the next page; null where there is none
 */
@Serdeable
public record IntakesAnswer(List<IntakeAnswer> intakes, @Nullable String next) {}
