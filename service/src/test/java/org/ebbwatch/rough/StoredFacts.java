package org.ebbwatch.rough;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.StoredRack;
import org.ebbwatch.store.AlarmRow;
import org.ebbwatch.store.FindingRow;
import org.ebbwatch.store.H2Database;
import org.ebbwatch.store.JournalReader;
import org.ebbwatch.store.JournalStore;
import org.ebbwatch.store.PassageRow;
import org.ebbwatch.store.Rows;

/** What a folder of records says of passages and alarms, held against what the world outside was told of them. */
final class StoredFacts {
    /** Conditions may wait this long for others like them before they become an alarm. */
    private static final long PATIENCE_MILLIS = 125_000;

    /** What is gone must stay away so long before its alarm returns to normal, and somebody must look. */
    private static final long AWAY_MILLIS = 62_000;

    private static final Set<String> ACTIVE = Set.of("UNACKNOWLEDGED", "ACKNOWLEDGED");

    private final Path records;
    private final Trouble trouble;

    StoredFacts(Path records, Trouble trouble) {
        this.records = records;
        this.trouble = trouble;
    }

    /**
     * Folds every passage again: what is written down of it is the beginning of what its readings give, and goes on where the
     * fold before left it.
     *
     * @param before what the fold before gave, by passage
     * @return what this fold gives
     */
    Map<UUID, List<String>> fold(Map<UUID, List<String>> before) {
        var told = new HashMap<UUID, List<String>>();
        try (StoredRack rack = StoredRack.open(records)) {
            for (PassageCard card : rack.cards()) {
                List<String> events = rack.refold(card).events();
                List<String> recorded = rack.recorded(card);
                trouble.unless(begins(recorded, events), card.id() + " is folded otherwise: " + recorded + events);
                List<String> earlier = before.getOrDefault(card.id(), List.of());
                trouble.unless(begins(earlier, events), card.id() + " has another past: " + earlier + events);
                told.put(card.id(), events);
            }
        }
        before.keySet().forEach(id -> trouble.unless(told.containsKey(id), "the passage " + id + " is gone"));
        return told;
    }

    private static boolean begins(List<String> beginning, List<String> whole) {
        return whole.size() >= beginning.size()
                && whole.subList(0, beginning.size()).equals(beginning);
    }

    /**
     * Everything that was told is on disk, and alarms and findings are about the same.
     *
     * @return how many gaps of watching the cell of this tag has on record
     */
    int compare(Person person, Ear ear, long lastEventMillis, String tag) {
        try (H2Database database = H2Database.open(records)) {
            var store = new JournalStore(database, () -> {});
            receipts(store, person);
            phases(store.reader(), person.phases());
            messages(database, ear);
            alarms(store, lastEventMillis);
            return gaps(store.reader(), tag);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private void receipts(JournalStore store, Person person) {
        for (String key : person.passageKeys()) {
            trouble.unless(store.receipts().find(key).isPresent(), "acknowledged and lost: " + key);
        }
        for (String key : person.alarmKeys()) {
            trouble.unless(store.receipts().findOfAlarm(key).isPresent(), "acknowledged and lost: " + key);
        }
    }

    private void phases(JournalReader reader, Map<UUID, String> seen) {
        seen.forEach((id, phase) -> {
            Set<String> been = reader.transitions(id).stream()
                    .map(row -> row.toPhase())
                    .collect(Collectors.toCollection(HashSet::new));
            been.add(Phase.CHECK_IN.name());
            trouble.unless(been.contains(phase), "passage " + id + " was shown in " + phase + " and was in " + been);
        });
    }

    private void messages(H2Database database, Ear ear) throws SQLException {
        Map<UUID, Optional<Long>> outbox = new HashMap<>();
        Rows.read(
                database,
                "select id, sent_wall_millis from outbox",
                row -> outbox.put(row.getObject(1, UUID.class), Optional.ofNullable(row.getObject(2, Long.class))));
        Set<UUID> heard = Set.copyOf(ear.heard().keySet());
        heard.forEach(id -> trouble.unless(
                outbox.containsKey(id), "told and not on disk: " + ear.heard().get(id)));
        outbox.forEach((id, sent) ->
                trouble.unless(sent.isEmpty() || heard.contains(id), "on disk as sent and never heard: message " + id));
    }

    private void alarms(JournalStore store, long lastEventMillis) {
        List<AlarmRow> living = store.alarms().living();
        Map<String, Set<String>> lately = new HashMap<>();
        Map<String, Set<String>> settled = new HashMap<>();
        for (PassageRow passage : store.reader().passages()) {
            String subject = "passage " + passage.id();
            for (FindingRow finding : store.reader().findings(passage.id())) {
                boolean stands = finding.clearedEventMillis().isEmpty();
                if (stands || finding.clearedEventMillis().getAsLong() > lastEventMillis - AWAY_MILLIS) {
                    lately.computeIfAbsent(subject, none -> new HashSet<>()).add(finding.kind());
                }
                if (stands
                        && passage.closing().isEmpty()
                        && finding.raisedEventMillis() < lastEventMillis - PATIENCE_MILLIS) {
                    settled.computeIfAbsent(subject, none -> new HashSet<>()).add(finding.kind());
                }
            }
        }
        for (AlarmRow alarm : living) {
            boolean has = lately.getOrDefault(alarm.subject(), Set.of()).contains(alarm.kind());
            trouble.unless(
                    !ACTIVE.contains(alarm.state())
                            || !alarm.subject().startsWith("passage ")
                            || alarm.kind().equals("HELD")
                            || has,
                    "an alarm without its finding: " + alarm);
        }
        settled.forEach((subject, kinds) -> kinds.forEach(kind -> trouble.unless(
                living.stream()
                        .anyMatch(alarm -> alarm.kind().equals(kind)
                                && (alarm.subject().equals(subject)
                                        || !alarm.subject().startsWith("passage "))),
                "a finding without its alarm: " + kind + " of " + subject)));
    }

    private static int gaps(JournalReader reader, String tag) {
        return (int) reader.passages().stream()
                .filter(row -> row.tag().equals(tag))
                .flatMap(row -> reader.journal(row.id()).stream())
                .filter(row -> row.kind().equals("Gap"))
                .count();
    }
}
