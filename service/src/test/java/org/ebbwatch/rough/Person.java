package org.ebbwatch.rough;

import io.micronaut.json.tree.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;

/** Somebody who never stops asking and acting over REST, and notes whatever was answered with yes. */
final class Person implements Runnable {
    private static final int PAUSE_MILLIS = 60;

    private final Rest rest;
    private final Random random;
    private final int quietFrom;
    private final Consumer<Done> hands;
    private final Set<String> passageKeys = ConcurrentHashMap.newKeySet();
    private final Set<String> alarmKeys = ConcurrentHashMap.newKeySet();
    private final Map<UUID, String> phases = new ConcurrentHashMap<>();
    private final Map<UUID, Integer> channels = new ConcurrentHashMap<>();
    private final Thread thread = new Thread(this, "person");
    private volatile boolean leaving;
    private volatile boolean idle;
    private int keys;

    /** An act that was answered with yes, for the hands at the board. */
    record Done(int channel, String act) {}

    /**
     * Somebody at a running rack.
     *
     * @param quietFrom nothing is ever done to cells on this channel or beyond
     * @param hands does at the board what was said to be done
     */
    Person(Rest rest, Random random, int quietFrom, Consumer<Done> hands) {
        this.rest = rest;
        this.random = random;
        this.quietFrom = quietFrom;
        this.hands = hands;
        thread.setDaemon(true);
        thread.start();
    }

    /** From now on does nothing, or acts again. */
    void idle(boolean yes) {
        idle = yes;
    }

    /** Keys of the requests about passages that were done and said to be on disk. */
    Set<String> passageKeys() {
        return passageKeys;
    }

    /** Keys of the requests about alarms that were done and said to be on disk. */
    Set<String> alarmKeys() {
        return alarmKeys;
    }

    /** The phase that was seen last of each passage. */
    Map<UUID, String> phases() {
        return phases;
    }

    /** Where each passage was seen. */
    Map<UUID, Integer> channels() {
        return channels;
    }

    @Override
    public void run() {
        try {
            while (!leaving) {
                Thread.sleep(PAUSE_MILLIS);
                Optional<Rest.Got> rack = rest.get("/rack");
                if (rack.isPresent() && !idle) {
                    look(rack.get().json());
                    actOnPassage(rack.get().json());
                    actOnAlarm();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void look(JsonNode rack) {
        for (JsonNode passage : rack.get("passages").values()) {
            UUID id = UUID.fromString(passage.get("id").getStringValue());
            phases.put(id, passage.get("phase").getStringValue());
            channels.put(id, passage.get("channel").getIntValue());
        }
    }

    private void actOnPassage(JsonNode rack) throws InterruptedException {
        List<JsonNode> open = new ArrayList<>();
        for (JsonNode passage : rack.get("passages").values()) {
            if (passage.get("channel").getIntValue() < quietFrom) {
                open.add(passage);
            }
        }
        if (open.isEmpty()) {
            return;
        }
        JsonNode chosen = open.get(random.nextInt(open.size()));
        String path = "/passages/" + chosen.get("id").getStringValue();
        Optional<Rest.Got> got = rest.get(path);
        if (got.isEmpty()) {
            return;
        }
        int channel = chosen.get("channel").getIntValue();
        List<String> allowed = texts(got.get().json().get("allowed"));
        allowed.removeIf(act -> act.equals("WITHDRAW") && random.nextInt(6) != 0);
        String tag = got.get().tag();
        if (!allowed.isEmpty() && random.nextInt(3) != 0) {
            String act = allowed.get(random.nextInt(allowed.size()));
            if (done(path + "/acts", "{\"act\": \"" + act + "\"}", tag)) {
                hands.accept(new Done(channel, act));
                if (act.equals("WITHDRAW")) {
                    checkIn(channel, chosen.get("switched").getBooleanValue());
                }
            }
        } else if (random.nextBoolean()) {
            done(path + "/meter-readings", "{\"volts\": " + (1 + random.nextInt(2_000)) / 1000.0 + "}", tag);
        } else {
            done(path + "/announcements", "{\"kind\": \"PROBE\", \"minutes\": 1}", tag);
        }
    }

    private void checkIn(int channel, boolean switched) throws InterruptedException {
        String key = key();
        String cell = "{\"board\": \"left\", \"channel\": " + channel + ", \"tag\": \"" + key
                + "\", \"chemistry\": \"nmc\", \"ratedAmpereHours\": 0.7, \"loadOhms\": 24, \"switched\": " + switched
                + "}";
        note(rest.post("/passages", cell, "", key), key, passageKeys);
    }

    private boolean done(String path, String body, String tag) throws InterruptedException {
        String key = key();
        return note(rest.post(path, body, tag, key), key, passageKeys);
    }

    private void actOnAlarm() throws InterruptedException {
        Optional<Rest.Got> got = rest.get("/alarms");
        if (got.isEmpty()) {
            return;
        }
        List<JsonNode> askable = new ArrayList<>();
        for (JsonNode alarm : got.get().json().get("alarms").values()) {
            if (!texts(alarm.get("allowed")).isEmpty()) {
                askable.add(alarm);
            }
        }
        if (askable.isEmpty() || random.nextBoolean()) {
            return;
        }
        JsonNode alarm = askable.get(random.nextInt(askable.size()));
        List<String> allowed = texts(alarm.get("allowed"));
        String step = allowed.get(random.nextInt(allowed.size()));
        String more = step.equals("SHELVED")
                ? ", \"minutes\": 1, \"reason\": \"tried\""
                : step.equals("TAKEN_OUT_OF_SERVICE") ? ", \"reason\": \"tried\"" : "";
        String key = key();
        note(
                rest.post(
                        "/alarms/" + alarm.get("id").getStringValue() + "/steps",
                        "{\"step\": \"" + step + "\"" + more + "}",
                        "\"" + alarm.get("sequence").getLongValue() + "\"",
                        key),
                key,
                alarmKeys);
    }

    private static boolean note(Optional<Rest.Got> answer, String key, Set<String> keys) {
        boolean onDisk = answer.isPresent() && answer.get().json().get("onDisk").getBooleanValue();
        if (onDisk) {
            keys.add(key);
        }
        return answer.isPresent();
    }

    private String key() {
        return "request-" + Long.toHexString(random.nextLong()) + "-" + ++keys;
    }

    private static List<String> texts(JsonNode array) {
        List<String> texts = new ArrayList<>();
        array.values().forEach(text -> texts.add(text.getStringValue()));
        return texts;
    }

    /** Goes away, when what was begun is done. */
    void leave() throws InterruptedException {
        leaving = true;
        thread.join();
    }
}
