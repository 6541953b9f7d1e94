package org.ebbwatch.intake;

import org.ebbwatch.intake.photo.PhotoType;

/** A photo as it is kept. */
public record CellPhoto(PhotoType type, byte[] content) {}
