package org.ebbwatch.intake;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.ebbwatch.acquire.HostClock;
import org.ebbwatch.intake.IntakeReply.Done;
import org.ebbwatch.intake.IntakeReply.KeyUsed;
import org.ebbwatch.intake.IntakeReply.Missing;
import org.ebbwatch.intake.IntakeReply.NeedsReason;
import org.ebbwatch.intake.IntakeReply.NothingToRepeat;
import org.ebbwatch.intake.IntakeReply.PhotoUnfit;
import org.ebbwatch.intake.IntakeReply.RecordsAway;
import org.ebbwatch.intake.IntakeReply.Stale;
import org.ebbwatch.intake.IntakeReply.StaysOut;
import org.ebbwatch.intake.IntakeReply.TagTaken;
import org.ebbwatch.intake.IntakeReply.UnknownTag;
import org.ebbwatch.intake.IntakeReply.VoltsUnfit;
import org.ebbwatch.intake.IntakeRequest.Amend;
import org.ebbwatch.intake.IntakeRequest.Name;
import org.ebbwatch.intake.IntakeRequest.Photograph;
import org.ebbwatch.intake.IntakeRequest.TakeIn;
import org.ebbwatch.intake.photo.StrippedPhoto;
import org.ebbwatch.intake.photo.UnfitPhotoException;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.IntakeFields;
import org.ebbwatch.intake.rule.Voltage;
import org.ebbwatch.store.IntakeRow;
import org.ebbwatch.store.StorageException;
import org.ebbwatch.store.WallLabel;
import org.ebbwatch.trace.codec.Sha256;

/**
 * Takes cells in and writes on their cards. What was written once is not written again for the same key, but answered again, across
 * restarts too. Requests are taken one after the other.
 */
public final class IntakeDesk {
    private static final String WALL_QUALITY = "host";
    private static final int MOST_OF_A_PREFIX = 100_000;

    private final IntakeBook book;
    private final Supplier<Set<String>> passageTags;
    private final HostClock clock;

    /**
     * A desk.
     *
     * @param passageTags tags of all cells that ever had a passage, so that no made-up tag is one of them
     */
    public IntakeDesk(IntakeBook book, Supplier<Set<String>> passageTags, HostClock clock) {
        this.book = book;
        this.passageTags = passageTags;
        this.clock = clock;
    }

    /** The cards. */
    public IntakeRecords records() {
        return book;
    }

    /**
     * Writes what is asked, wholly or not at all.
     *
     * @param key made by whoever asks, 8 to 200 characters, another one for each request
     */
    public synchronized IntakeReply ask(IntakeRequest request, String key) {
        String hash = hash(request);
        Optional<IntakeRow> before = book.writtenBy(key);
        if (before.isPresent()) {
            return before.get().requestHash().equals(hash)
                    ? new Done(book.tagged(before.get().tag()).orElseThrow())
                    : new KeyUsed(key);
        }
        try {
            return answer(request, key, hash);
        } catch (StorageException e) {
            return new RecordsAway(e.getMessage());
        }
    }

    private IntakeReply answer(IntakeRequest request, String key, String hash) {
        if (request instanceof TakeIn takeIn) {
            return takeIn(takeIn, key, hash);
        }
        if (request instanceof Amend amend) {
            return amend(amend, key, hash);
        }
        return photograph((Photograph) request, key, hash);
    }

    private static String hash(IntakeRequest request) {
        String what = request instanceof Photograph photo
                ? photo.tag() + '\u001f' + Sha256.of(photo.content())
                : request.toString();
        return Sha256.of(request.getClass().getSimpleName() + '\u001f' + what).toString();
    }

    // ---- a cell comes ----

    private IntakeReply takeIn(TakeIn request, String key, String hash) {
        IntakeFields common = IntakeFields.NOTHING;
        if (request.likeTag().isPresent()) {
            Optional<IntakeRecord> like = book.tagged(request.likeTag().get());
            if (like.isEmpty()) {
                return new UnknownTag(request.likeTag().get());
            }
            common = like.get().card().common();
        } else if (request.likeLast()) {
            Optional<IntakeRecord> last = book.latest().stream().findFirst();
            if (last.isEmpty()) {
                return new NothingToRepeat();
            }
            common = last.get().card().common();
        }
        IntakeFields card = request.fields().over(common);
        Optional<IntakeReply> unfit = unfit(card);
        if (unfit.isPresent()) {
            return unfit.get();
        }
        String tag = tag(request.name());
        if (book.tagged(tag).isPresent()) {
            return new TagTaken(tag);
        }
        return written(tag, 1, card, request.by(), "", key, hash, Optional.empty());
    }

    private String tag(Name name) {
        if (name instanceof Name.Given given) {
            return given.tag();
        }
        String prefix = ((Name.Numbered) name).prefix();
        Set<String> taken = passageTags.get();
        return IntStream.range(1, MOST_OF_A_PREFIX)
                .mapToObj(number -> String.format(Locale.ROOT, "%s-%03d", prefix, number))
                .filter(tag -> !taken.contains(tag) && book.tagged(tag).isEmpty())
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("a hundred thousand cells are called " + prefix));
    }

    private static Optional<IntakeReply> unfit(IntakeFields card) {
        if (card.chemistry().isEmpty()) {
            return Optional.of(new Missing("chemistry"));
        }
        if (card.cellsInSeries().isEmpty()) {
            return Optional.of(new Missing("cellsInSeries"));
        }
        if (card.ratedAmpereHours().isEmpty()) {
            return Optional.of(new Missing("ratedAmpereHours"));
        }
        if (card.condition().isEmpty()) {
            return Optional.of(new Missing("condition"));
        }
        if (card.protectionBoard().isEmpty()) {
            return Optional.of(new Missing("protectionBoard"));
        }
        return card.measuredVolts().flatMap(volts -> unfit(card, volts));
    }

    private static Optional<IntakeReply> unfit(IntakeFields card, double volts) {
        Voltage voltage =
                Voltage.of(card.chemistry().orElseThrow(), card.cellsInSeries().orElseThrow(), volts);
        boolean refused = voltage.isRefused()
                || (voltage.wantsAReason() && card.voltsExplained().isEmpty());
        return refused
                ? Optional.of(new VoltsUnfit(
                        voltage,
                        voltage.why(
                                card.chemistry().orElseThrow(),
                                card.cellsInSeries().orElseThrow(),
                                volts)))
                : Optional.empty();
    }

    // ---- on a card there is ----

    private IntakeReply amend(Amend request, String key, String hash) {
        Optional<IntakeRecord> found = book.tagged(request.tag());
        if (found.isEmpty()) {
            return new UnknownTag(request.tag());
        }
        IntakeRecord record = found.get();
        if (request.seen() != record.last().number()) {
            return new Stale(request.tag(), request.seen(), record.last().number());
        }
        IntakeFields card = request.fields()
                .over(request.fields().bearsOnVolts() ? record.card().unexplained() : record.card());
        Optional<Condition> condition = record.card().condition();
        if (condition.filter(Condition::isForGood).isPresent()
                && !card.condition().equals(condition)) {
            return new StaysOut(request.tag(), condition.get());
        }
        Optional<IntakeReply> unfit = unfit(card);
        if (unfit.isPresent()) {
            return unfit.get();
        }
        if (request.reason().isEmpty() && card.overwrites(record.card())) {
            return new NeedsReason();
        }
        return written(
                request.tag(),
                record.last().number() + 1,
                card,
                request.by(),
                request.reason(),
                key,
                hash,
                Optional.empty());
    }

    private IntakeReply photograph(Photograph request, String key, String hash) {
        Optional<IntakeRecord> found = book.tagged(request.tag());
        if (found.isEmpty()) {
            return new UnknownTag(request.tag());
        }
        IntakeRecord record = found.get();
        if (request.seen() != record.last().number()) {
            return new Stale(request.tag(), request.seen(), record.last().number());
        }
        try {
            StrippedPhoto stripped = StrippedPhoto.of(request.content());
            String sha256 = Sha256.of(stripped.content()).toString();
            return written(
                    request.tag(),
                    record.last().number() + 1,
                    record.card().withPhoto(sha256),
                    request.by(),
                    "",
                    key,
                    hash,
                    Optional.of(new IntakeRow.Photo(
                            request.tag(), sha256, stripped.type().mediaType(), stripped.content())));
        } catch (UnfitPhotoException e) {
            return new PhotoUnfit(e.getMessage());
        }
    }

    private IntakeReply written(
            String tag,
            int revision,
            IntakeFields card,
            String by,
            String reason,
            String key,
            String hash,
            Optional<IntakeRow.Photo> photo) {
        var wall = new WallLabel(clock.now().wallMillis(), WALL_QUALITY);
        return new Done(
                book.write(new IntakeRow(tag, revision, key, hash, by, reason, IntakeJson.write(card), wall), photo));
    }
}
