package org.ebbwatch.passage;

import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ebbwatch.acquire.BoardScan;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackSource.TracePoint;
import org.ebbwatch.passage.RackSource.Window;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.store.AlarmTable;
import org.ebbwatch.store.CalibrationTable;
import org.ebbwatch.store.Database;
import org.ebbwatch.store.EveningTable;
import org.ebbwatch.store.IntakeTable;
import org.ebbwatch.store.JournalRow;
import org.ebbwatch.store.JournalStore;
import org.ebbwatch.store.MorningTable;
import org.ebbwatch.store.PassageRow;
import org.ebbwatch.store.ReceiptTable;
import org.ebbwatch.store.Records;
import org.ebbwatch.store.Reserve;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.store.WallLabel;
import org.ebbwatch.time.EventClock;
import org.ebbwatch.trace.BoardBoot;
import org.ebbwatch.trace.TraceStore;
import org.ebbwatch.trace.codec.ValueKinds;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A rack's readings in a {@link TraceStore} and its journal in a {@link JournalStore}, both of one {@link Records}. Storage that
 * fails is logged once, tried again at every flush, and never stops the watch.
 */
public final class StoredRack implements RackStorage {
    private static final Logger LOG = LoggerFactory.getLogger(StoredRack.class);
    private static final String WALL_QUALITY = "host";
    private static final Duration RECEIPTS_KEPT = Duration.ofDays(30);

    private final Records records;
    private final TraceStore trace;
    private final JournalStore journal;
    private final Map<UUID, EventRows> rows = new HashMap<>();
    private final Outage outage = new Outage();

    private StoredRack(Records records) {
        this.records = records;
        this.trace = TraceStore.open(records.database(), records.folder());
        this.journal = records.journal(trace);
    }

    /** The rack of the records in this directory; see {@link Records#inFolder}. On a full disk the {@link Reserve} is given up for it. */
    public static StoredRack open(Path directory) {
        return Reserve.open(directory, () -> of(Records.inFolder(directory)));
    }

    /**
     * The rack of these records, which are closed with it.
     *
     * @throws StorageException if its readings cannot be opened; then the records are closed
     */
    public static StoredRack of(Records records) {
        try {
            return new StoredRack(records);
        } catch (StorageException e) {
            records.close();
            throw e;
        }
    }

    @Override
    public void identified(String board, BoardBasis basis) {
        Identity identity = basis.said();
        boolean amperes = identity.channels().stream()
                .anyMatch(channel -> channel.abilities().contains(Ability.AMPERES));
        ValueKinds kinds = amperes ? ValueKinds.COUNTS : ValueKinds.COUNTS_WITHOUT_AMPERES;
        trace.identified(new BoardBoot(board, identity.bootNumber(), kinds, BasisText.write(basis)));
    }

    @Override
    public void append(String board, BoardScan scan) {
        trace.append(board, new KeptScan(scan));
        trace.seen(board, scan.seen());
    }

    @Override
    public void opened(PassageCard card) {
        rows.put(card.id(), new EventRows(card.id(), journal));
        journal.openPassage(StoredCard.row(card));
    }

    @Override
    public void entered(UUID passage, long sequence, long lastScanMillis, Entry entry) {
        journal.append(new JournalRow(
                passage,
                sequence,
                entry.eventMillis(),
                lastScanMillis,
                EntryJson.kind(entry),
                EntryJson.body(entry),
                new WallLabel(System.currentTimeMillis(), WALL_QUALITY)));
    }

    @Override
    public void happened(UUID passage, long sequence, long eventMillis, Event event) {
        rows.computeIfAbsent(passage, id -> new EventRows(id, journal)).add(eventMillis, event);
    }

    @Override
    public void commit() {
        attempt();
    }

    @Override
    public void flush() {
        trace.tick(System.nanoTime());
        attempt();
    }

    @Override
    public EventClock clock(String board) {
        trace.expect(board);
        OptionalLong lastMillis = trace.lastEventMillis(board);
        if (lastMillis.isEmpty()) {
            return EventClock.fresh();
        }
        return trace.lastSeen(board)
                .map(seen -> EventClock.resumed(seen, lastMillis.getAsLong()))
                .orElseGet(() -> EventClock.resumed(lastMillis.getAsLong()));
    }

    /** Every passage ever opened here, oldest first. */
    public List<PassageCard> cards() {
        return journal.reader().passages().stream().map(StoredCard::of).toList();
    }

    @Override
    public Set<String> tags() {
        return journal.reader().passages().stream().map(PassageRow::tag).collect(Collectors.toSet());
    }

    @Override
    public List<PassageCard> openCards() {
        return journal.reader().openPassages().stream().map(StoredCard::of).toList();
    }

    @Override
    public Optional<PassageCard> card(UUID passage) {
        return journal.reader().passage(passage).map(StoredCard::of);
    }

    @Override
    public List<ClosedPassage> closed(Optional<UUID> before, int most) {
        return journal.reader().closedPassages(before, most).stream()
                .map(row -> new ClosedPassage(
                        StoredCard.of(row.passage()),
                        row.passage().closing().orElseThrow().eventMillis(),
                        Phase.valueOf(row.phase()),
                        row.passage().closing().orElseThrow().reason()))
                .toList();
    }

    /** Folds what is stored of a passage again, from its first reading on. */
    public Refolded refold(PassageCard card) {
        return StoredFold.fold(card, new StoredJournal(card, journal.reader().journal(card.id()), trace));
    }

    @Override
    public TakenUp takeUp(PassageCard card) {
        Refolded refolded = refold(card);
        var itsRows = new EventRows(card.id(), journal);
        rows.put(card.id(), itsRows);
        return new TakenUp(card, refolded, itsRows.resume(refolded));
    }

    @Override
    public List<String> recorded(PassageCard card) {
        return EventRows.written(journal.reader(), card.id());
    }

    @Override
    public void read(PassageCard card, JournalTaker taker) {
        new StoredJournal(card, journal.reader().journal(card.id()), trace).read(taker);
    }

    @Override
    public List<TracePoint> trace(PassageCard card, Window window, int points) {
        return new TracePoints(card, OnChannel.of(card, journal.reader().journal(card.id())), trace, endMillis(card))
                .thinned(window, points);
    }

    @Override
    public Optional<RestPrediction> restPrediction(PassageCard card, long offMillis) {
        long rest = card.procedure().rest().leastMillis();
        return RestPrediction.of(reader(card), offMillis, endMillis(card) + 1, rest);
    }

    private ScanReader reader(PassageCard card) {
        return new ScanReader(card.board(), OnChannel.of(card, journal.reader().journal(card.id())), trace);
    }

    @Override
    public PassageChain chain(PassageCard card) {
        return StoredChain.of(card, journal.reader().journal(card.id()), trace, endMillis(card));
    }

    /**
     * Seals readings that no segment holds yet, however few; by the thread that appends them alone.
     *
     * @throws StorageException if the database does not take them
     */
    public void seal() {
        trace.sealAll();
    }

    /** Event time of a passage's end, or of what was heard last while it has none. */
    private long endMillis(PassageCard card) {
        return journal.reader()
                .passage(card.id())
                .flatMap(PassageRow::closing)
                .map(PassageRow.Closing::eventMillis)
                .orElseGet(() -> trace.lastEventMillis(card.board()).orElse(card.openedMillis()));
    }

    @Override
    public BackupSource backupSource() {
        return new StoredBackup(records.database(), trace);
    }

    /** The database itself, for what is done with records that no service uses. */
    public Database database() {
        return records.database();
    }

    @Override
    public MorningTable mornings() {
        return journal.mornings();
    }

    @Override
    public AlarmTable alarms() {
        return journal.alarms();
    }

    @Override
    public ReceiptTable receipts() {
        return journal.receipts();
    }

    @Override
    public EveningTable evenings() {
        return journal.evenings();
    }

    @Override
    public IntakeTable intakes() {
        return new IntakeTable(records.database());
    }

    @Override
    public CalibrationTable calibrations() {
        return journal.calibrations();
    }

    @Override
    public long freeBytes() {
        return records.folder().toFile().getUsableSpace();
    }

    @Override
    public long beginRun(long wallMillis) {
        try {
            int forgotten = journal.receipts().forgetBefore(wallMillis - RECEIPTS_KEPT.toMillis());
            if (forgotten > 0) {
                LOG.info("{} receipts older than {} days are forgotten", forgotten, RECEIPTS_KEPT.toDays());
            }
            return journal.beginRun(wallMillis);
        } catch (StorageException e) {
            LOG.error("This run of the service cannot be counted", e);
            return 0;
        }
    }

    @Override
    public Optional<String> trouble() {
        return outage.trouble()
                .or(journal::trouble)
                .or(() -> trace.health().tailTrouble())
                .or(() -> trace.health().databaseTrouble());
    }

    @Override
    public void close() {
        commitFacts();
        try {
            trace.close();
        } finally {
            records.close();
        }
    }

    private void attempt() {
        if (outage.isTimeToTry()) {
            commitFacts();
        }
    }

    private void commitFacts() {
        try {
            journal.commitFacts();
            outage.over();
        } catch (StorageException e) {
            outage.failed(e);
        }
    }
}
