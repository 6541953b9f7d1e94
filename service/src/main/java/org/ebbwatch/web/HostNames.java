package org.ebbwatch.web;

import io.micronaut.context.annotation.Value;
import io.micronaut.http.server.HttpServerConfiguration;
import jakarta.inject.Singleton;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The host names under which the service may be acted on: this machine's loopback, the address it listens on, and those of the rack
 * file. A page of a stranger whose name was bent to this machine's address (DNS rebinding) comes under its own name.
 */
@Singleton
class HostNames {
    private static final Pattern LOOPBACK = Pattern.compile("localhost|127(\\.[0-9]{1,3}){3}|\\[::1]");
    private static final Pattern PORT = Pattern.compile(":[0-9]{1,5}$");

    private final Set<String> allowed = new HashSet<>();

    HostNames(HttpServerConfiguration http, @Value("${ebbwatch.http.names:}") List<String> names) {
        http.getHost().map(HostNames::name).ifPresent(allowed::add);
        names.forEach(name -> allowed.add(name(name)));
    }

    /**
     * Whether the value of a Host header names this service.
     *
     * @param host name or address, with or without a port
     */
    boolean isOurs(String host) {
        String name = name(host);
        return LOOPBACK.matcher(name).matches() || allowed.contains(name);
    }

    private static String name(String host) {
        String lower = host.strip().toLowerCase(Locale.ROOT);
        boolean bareAddress = lower.indexOf(':') != lower.lastIndexOf(':') && !lower.startsWith("[");
        String name = bareAddress ? '[' + lower + ']' : PORT.matcher(lower).replaceFirst("");
        return name.endsWith(".") ? name.substring(0, name.length() - 1) : name;
    }
}
