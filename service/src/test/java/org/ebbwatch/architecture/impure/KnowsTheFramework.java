package org.ebbwatch.architecture.impure;

import io.micronaut.context.BeanContext;
import java.sql.Connection;
import org.ebbwatch.judge.Phase;

final class KnowsTheFramework {
    String all(BeanContext beans, Connection connection, Phase phase) {
        return beans.toString() + connection + phase;
    }
}
