package org.ebbwatch.architecture.impure;

import java.time.Instant;

final class AsksTheWall {
    Instant time() {
        return Instant.now();
    }
}
