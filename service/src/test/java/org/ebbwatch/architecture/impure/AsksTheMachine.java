package org.ebbwatch.architecture.impure;

final class AsksTheMachine {
    long nanos() {
        return System.nanoTime();
    }
}
