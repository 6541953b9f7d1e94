package org.ebbwatch.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.LongFunction;
import org.ebbwatch.calibration.BoardScale;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Entry;
import org.ebbwatch.judge.Entry.Suspicion;
import org.ebbwatch.judge.Judge;
import org.ebbwatch.judge.procedure.CellCard;
import org.ebbwatch.judge.procedure.Chemistry;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.BoardBasis;
import org.ebbwatch.passage.EventLine;
import org.ebbwatch.passage.HeardBoard;
import org.ebbwatch.passage.IdentityText;
import org.ebbwatch.passage.JournalTaker;
import org.ebbwatch.passage.KeptEntry;
import org.ebbwatch.passage.PassageCard;
import org.ebbwatch.passage.PassageChain;
import org.ebbwatch.rig.message.Ability;
import org.ebbwatch.rig.message.ChannelIdentity;
import org.ebbwatch.rig.message.ChannelRole;
import org.ebbwatch.rig.message.ClockKind;
import org.ebbwatch.rig.message.Converter;
import org.ebbwatch.rig.message.Identity;
import org.ebbwatch.rig.message.Scales;
import org.ebbwatch.trace.codec.Sha256;

/** A passage made up second by second, kept in memory. */
public final class InventedPassage {
    static final UUID ID = UUID.fromString("01900000-0000-7000-8000-0123456789ab");
    static final Procedure BRISK = brisk();

    private static final long OPENED_MILLIS = 1;
    private static final long OPENED_WALL_MILLIS = 1_750_000_000_000L;
    private static final long STEP_MILLIS = 1_000;

    private final PassageCard card;
    private final BoardScale scale;
    private final List<Object> steps = new ArrayList<>();
    private long millis = OPENED_MILLIS - 1;
    private long lastScanMillis = OPENED_MILLIS - 1;

    InventedPassage(String tag, boolean simulated) {
        Identity identity = identity(simulated);
        var cell = new CellCard(tag, Chemistry.LAYERED_OXIDE, 0.05, 2, true, false);
        card = new PassageCard(
                ID, "bench", 0, cell, BRISK, OPENED_MILLIS, OPENED_WALL_MILLIS, simulated ? identity.speed() : 0);
        scale = new BoardScale(identity);
        steps.add(new HeardBoard(
                "bench",
                0,
                1,
                BoardBasis.of(identity),
                Sha256.of(IdentityText.write(identity)).toString()));
    }

    /** A cell that is drained, rested, tied off and parted, a minute each, with a gap and a meter reading on the way. */
    public static InventedPassage whole(String tag) {
        return new InventedPassage(tag, true)
                .reads(15, 3.7, 3.7, false)
                .enters(at -> new Entry.Acted(at, Act.PUT_ON))
                .reads(30, 3.6, 0.9, true)
                .reads(20, 0.7, 0.02, true)
                .reads(70, 0.02, 0.001, true)
                .reads(20, 0.02, 0.2, false)
                .enters(at -> new Entry.LeadChecked(at, Entry.LeadProof.ATTACHED))
                .reads(30, 0.2, 0.22, false)
                .enters(at -> new Entry.Gap(at + 4_000, 4_000, 6_000))
                .reads(40, 0.22, 0.23, false)
                .enters(at -> new Entry.Metered(at, 0.2301))
                .reads(5, 0.23, 0.23, false)
                .enters(at -> new Entry.Acted(at, Act.TIE_OFF))
                .reads(70, 0.001, 0.001, false)
                .enters(at -> new Entry.Acted(at, Act.PART))
                .reads(20, 0.01, 0.1, false)
                .enters(at -> new Entry.LeadChecked(at, Entry.LeadProof.ATTACHED))
                .reads(30, 0.1, 0.11, false)
                .enters(at -> new Entry.Acted(at, Act.RELEASE));
    }

    /** A cell that is looked at and taken out again. */
    public static InventedPassage brief(String tag) {
        return new InventedPassage(tag, false)
                .reads(12, 3.70, 3.71, false)
                .enters(at -> new Entry.Acted(at, Act.WITHDRAW));
    }

    InventedPassage reads(int seconds, double fromVolts, double toVolts, boolean load) {
        for (int i = 0; i < seconds; i++) {
            millis += STEP_MILLIS;
            int counts = (int) Math.round((fromVolts + (toVolts - fromVolts) * i / seconds) * 1e4) + i % 2;
            double volts = scale.volts(counts);
            lastScanMillis = millis;
            steps.add(new Entry.Scan(
                    millis,
                    volts,
                    scale.expandedVolts(volts),
                    scale.resolutionVolts(),
                    Double.NaN,
                    scale.celsius(1050 + i % 3),
                    scale.celsius(1040 - i % 2),
                    Double.NaN,
                    Double.NaN,
                    load,
                    Suspicion.NONE));
        }
        return this;
    }

    /** An entry at the time of the last reading; time goes on to what the entry says. */
    InventedPassage enters(LongFunction<Entry> entry) {
        return enters(entry, steps.size());
    }

    /** An entry that had this sequence number when it was written down. */
    InventedPassage enters(LongFunction<Entry> entry, long sequence) {
        Entry entered = entry.apply(millis);
        millis = entered.eventMillis();
        steps.add(new KeptEntry(sequence, lastScanMillis, OPENED_WALL_MILLIS + millis, entered));
        return this;
    }

    List<Entry.Scan> scans() {
        return steps.stream()
                .filter(Entry.Scan.class::isInstance)
                .map(Entry.Scan.class::cast)
                .toList();
    }

    /** What was watched and written down, and what can be told again. */
    public PassageRecords records() {
        List<String> writtenDown = new ArrayList<>();
        var judge = new Judge(card.cell(), card.procedure());
        for (Object step : steps) {
            Entry entry = step instanceof KeptEntry kept ? kept.entry() : step instanceof Entry.Scan scan ? scan : null;
            if (entry != null) {
                judge.fold(entry).events().forEach(event -> EventLine.of(entry.eventMillis(), event)
                        .ifPresent(writtenDown::add));
            }
        }
        return new PassageRecords(card, this::tell, writtenDown, chain(), Optional.empty());
    }

    /** As if the trace had been sealed every minute. */
    private PassageChain chain() {
        List<PassageChain.Link> links = new ArrayList<>();
        Sha256 previous = Sha256.NONE;
        long end = endMillis();
        List<Entry.Scan> block = new ArrayList<>(scans());
        block.removeIf(scan -> scan.eventMillis() > end);
        while (!block.isEmpty()) {
            List<Entry.Scan> sealed = block.subList(0, Math.min(60, block.size()));
            Sha256 hash = Sha256.of(previous + sealed.toString());
            links.add(new PassageChain.Link(
                    1,
                    links.size() * 60L,
                    sealed.get(0).eventMillis(),
                    sealed.get(sealed.size() - 1).eventMillis(),
                    sealed.size(),
                    previous,
                    hash));
            previous = hash;
            sealed.clear();
        }
        return new PassageChain(List.of(new PassageChain.Stay("bench", 0, OPENED_MILLIS, end + 1, links)));
    }

    private long endMillis() {
        return steps.stream()
                .filter(step -> step instanceof KeptEntry kept
                        && kept.entry() instanceof Entry.Acted acted
                        && (acted.act() == Act.RELEASE || acted.act() == Act.WITHDRAW))
                .map(step -> ((KeptEntry) step).entry().eventMillis())
                .findFirst()
                .orElse(millis);
    }

    private void tell(JournalTaker taker) {
        long sequence = 0;
        boolean wanted = true;
        for (Object step : steps) {
            if (step instanceof HeardBoard board) {
                taker.board(board);
            } else if (wanted && step instanceof Entry.Scan scan) {
                wanted = taker.scan(++sequence, scan);
            } else if (wanted && step instanceof KeptEntry kept) {
                wanted = taker.entry(++sequence, kept);
            }
        }
    }

    private static Identity identity(boolean simulated) {
        var cell = new ChannelIdentity(ChannelRole.CELL, Set.of(Ability.VOLTS, Ability.CELSIUS), 2_000);
        var ambient = new ChannelIdentity(ChannelRole.AMBIENT, Set.of(Ability.CELSIUS), 0);
        return new Identity(
                1,
                ClockKind.CRYSTAL,
                simulated,
                false,
                false,
                simulated ? 600 : 1,
                STEP_MILLIS,
                0,
                new Scales(100_000, 0, 20_000),
                new Converter(-5_000, 50_000, 400_000, 500, 300_000),
                0,
                "BENCH-7",
                "invented 1",
                List.of(cell, ambient));
    }

    private static Procedure brisk() {
        Procedure careful = Procedure.careful();
        return new Procedure(
                "brisk",
                1,
                new Procedure.Drain(1.0, 0.10, 60_000, 3_600_000),
                new Procedure.Rest(0.50, 60_000, 30_000),
                new Procedure.TieOff(60_000, 30_000, 30_000, 60_000, 0.02),
                careful.heat(),
                careful.plausible());
    }
}
