package org.ebbwatch.web;

import io.micronaut.core.type.Argument;
import io.micronaut.http.HttpRequest;
import io.micronaut.http.annotation.RequestFilter;
import io.micronaut.http.annotation.ServerFilter;
import io.micronaut.web.router.MethodBasedRouteMatch;
import io.micronaut.web.router.RouteAttributes;
import java.util.Set;
import java.util.TreeSet;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Refuses a query parameter that no route takes: a misspelt filter must not look like an answer. */
@ServerFilter("/api/v1/**")
class KnownQuery {

    @RequestFilter
    void check(HttpRequest<?> request) {
        RouteAttributes.getRouteMatch(request)
                .filter(MethodBasedRouteMatch.class::isInstance)
                .ifPresent(route -> check(request, (MethodBasedRouteMatch<?, ?>) route));
    }

    private static void check(HttpRequest<?> request, MethodBasedRouteMatch<?, ?> route) {
        Set<String> taken = new TreeSet<>();
        for (Argument<?> argument : route.getArguments()) {
            taken.add(argument.getName());
        }
        taken.removeAll(route.getVariableValues().keySet());
        for (String given : request.getParameters().names()) {
            if (!taken.contains(given)) {
                throw new ProblemException(
                        ProblemKind.BAD_PARAMETER,
                        request.getPath() + " takes no parameter \"" + given + "\"; it takes "
                                + (taken.isEmpty() ? "none" : String.join(", ", taken)) + '.');
            }
        }
    }
}
