package org.ebbwatch.web;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/**
 * What of an earlier description of an interface (OpenAPI 3) a later one no longer keeps, so that whoever was made for the earlier
 * one fails: paths, methods, answers and their fields that are gone or are of another kind, answers that may newly be null, and what
 * requests newly need or no longer may say. Additions are no break.
 */
final class BreakingChanges {
    private static final Set<String> METHODS = Set.of("get", "put", "post", "delete", "patch", "head", "options");

    private final Map<?, ?> before;
    private final Map<?, ?> after;
    private final List<String> found = new ArrayList<>();
    private final Set<String> compared = new HashSet<>();

    private BreakingChanges(String before, String after) {
        this.before = parsed(before);
        this.after = parsed(after);
    }

    /** One line for each. */
    static List<String> between(String before, String after) {
        var changes = new BreakingChanges(before, after);
        changes.paths();
        return changes.found;
    }

    private static Map<?, ?> parsed(String yaml) {
        return (Map<?, ?>) new Load(LoadSettings.builder().build()).loadFromString(yaml);
    }

    private void paths() {
        map(before, "paths").forEach((path, item) -> {
            Map<?, ?> later = map(map(after, "paths"), path.toString());
            for (Object method : ((Map<?, ?>) item).keySet()) {
                if (METHODS.contains(method.toString())) {
                    operation(
                            method + " " + path,
                            map((Map<?, ?>) item, method.toString()),
                            later.get(method.toString()));
                }
            }
        });
    }

    private void operation(String where, Map<?, ?> was, Object is) {
        if (!(is instanceof Map<?, ?> now)) {
            found.add(where + " is gone");
            return;
        }
        parameters(where, was, now);
        body(where, was, now);
        map(was, "responses").forEach((status, answer) -> {
            if (map(now, "responses").get(status) instanceof Map<?, ?> later) {
                contents(where + " " + status, (Map<?, ?>) answer, later, false);
            } else {
                found.add(where + " no longer answers " + status);
            }
        });
    }

    private void parameters(String where, Map<?, ?> was, Map<?, ?> now) {
        for (Object each : list(was, "parameters")) {
            Map<?, ?> parameter = (Map<?, ?>) each;
            Map<?, ?> later = named(list(now, "parameters"), parameter);
            if (later.isEmpty()) {
                found.add(where + " no longer takes " + parameter.get("name"));
            } else {
                schema(where + " ?" + parameter.get("name"), parameter.get("schema"), later.get("schema"), true);
            }
        }
        for (Object each : list(now, "parameters")) {
            Map<?, ?> parameter = (Map<?, ?>) each;
            boolean neededBefore = isTrue(named(list(was, "parameters"), parameter), "required");
            if (isTrue(parameter, "required") && !neededBefore) {
                found.add(where + " newly needs " + parameter.get("name"));
            }
        }
    }

    private static Map<?, ?> named(List<?> parameters, Map<?, ?> like) {
        return parameters.stream()
                .map(each -> (Map<?, ?>) each)
                .filter(each -> each.get("name").equals(like.get("name"))
                        && each.get("in").equals(like.get("in")))
                .findFirst()
                .orElse(Map.of());
    }

    private void body(String where, Map<?, ?> was, Map<?, ?> now) {
        if (was.containsKey("requestBody")) {
            contents(where + " body", map(was, "requestBody"), map(now, "requestBody"), true);
        } else if (isTrue(map(now, "requestBody"), "required")) {
            found.add(where + " newly needs a body");
        }
    }

    private void contents(String where, Map<?, ?> was, Map<?, ?> now, boolean sent) {
        map(was, "content").forEach((type, content) -> {
            if (map(now, "content").get(type) instanceof Map<?, ?> later) {
                schema(where, ((Map<?, ?>) content).get("schema"), later.get("schema"), sent);
            } else {
                found.add(where + " is no longer " + type);
            }
        });
    }

    private void schema(String where, Object was, Object is, boolean sent) {
        Map<?, ?> one = resolved(before, was);
        Map<?, ?> other = resolved(after, is);
        if (!compared.add(sent + " " + was + " " + is)) {
            return;
        }
        for (String fixed : List.of("type", "format")) {
            if (one.get(fixed) != null && !one.get(fixed).equals(other.get(fixed))) {
                found.add(where + " had the " + fixed + " " + one.get(fixed) + ", now " + other.get(fixed));
            }
        }
        if (!sent && isTrue(other, "nullable") && !isTrue(one, "nullable")) {
            found.add(where + " may newly be null");
        }
        for (Object choice : list(one, "enum")) {
            if (!list(other, "enum").contains(choice)) {
                found.add(where + " is no longer ever " + choice);
            }
        }
        map(one, "properties").forEach((name, property) -> {
            String field = where + "." + name;
            if (map(other, "properties").containsKey(name)) {
                schema(field, property, map(other, "properties").get(name), sent);
            } else {
                found.add(field + " is gone");
            }
        });
        required(where, one, other, sent);
        if (one.containsKey("items")) {
            schema(where + "[]", one.get("items"), other.get("items"), sent);
        }
    }

    private void required(String where, Map<?, ?> was, Map<?, ?> is, boolean sent) {
        Collection<?> mustHave = list(sent ? is : was, "required");
        Collection<?> had = list(sent ? was : is, "required");
        for (Object name : mustHave) {
            if (!had.contains(name)) {
                found.add(where + "." + name + (sent ? " is newly needed" : " may newly be left out"));
            }
        }
    }

    /** Follows a reference, alone or within allOf; what stands beside it counts too. */
    private static Map<?, ?> resolved(Map<?, ?> document, Object schema) {
        if (!(schema instanceof Map<?, ?> own)) {
            return Map.of();
        }
        Object reference = own.get("$ref");
        if (reference == null && list(own, "allOf").size() == 1) {
            reference = ((Map<?, ?>) list(own, "allOf").get(0)).get("$ref");
        }
        if (reference == null) {
            return own;
        }
        String name = reference.toString().substring(reference.toString().lastIndexOf('/') + 1);
        var whole = new LinkedHashMap<Object, Object>(map(map(map(document, "components"), "schemas"), name));
        whole.putAll(own);
        return whole;
    }

    private static Map<?, ?> map(Map<?, ?> in, String key) {
        return in.get(key) instanceof Map<?, ?> found ? found : Map.of();
    }

    private static List<?> list(Map<?, ?> in, String key) {
        return in.get(key) instanceof List<?> found ? found : List.of();
    }

    private static boolean isTrue(Map<?, ?> in, String key) {
        return Boolean.TRUE.equals(in.get(key));
    }
}
