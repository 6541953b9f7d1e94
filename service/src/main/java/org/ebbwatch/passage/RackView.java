package org.ebbwatch.passage;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import org.ebbwatch.acquire.LinkState;
import org.ebbwatch.calibration.Calibration;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.Finding;
import org.ebbwatch.judge.LoadStep;
import org.ebbwatch.judge.Outcome;
import org.ebbwatch.judge.Outcome.Event;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.rig.message.ChannelRole;

/**
 * The rack as it stands at one moment, for people to look at.
 *
 * @param unwatched a line for each cell that was to be checked in by itself and could not be: nobody watches it
 */
public record RackView(
        List<BoardView> boards, List<ChannelView> channels, List<PassageView> passages, List<String> unwatched) {

    /** A rack whose cells are all watched. */
    public RackView(List<BoardView> boards, List<ChannelView> channels, List<PassageView> passages) {
        this(boards, channels, passages, List.of());
    }

    /**
     * One board.
     *
     * @param simulatedSpeed 0 for a real board
     * @param eventMillis event time of its last scan, -1 before the first
     * @param wallMillis when that scan arrived
     */
    public record BoardView(
            String name,
            LinkState link,
            String detail,
            String serialNumber,
            int simulatedSpeed,
            long eventMillis,
            long wallMillis,
            int contacts) {}

    /**
     * One channel's latest reading; NaN where there is none to believe.
     *
     * @param calibratedWallMillis when it was calibrated; empty where it never was
     */
    public record ChannelView(
            String board,
            int channel,
            ChannelRole role,
            double volts,
            double expandedVolts,
            double celsius,
            double amperes,
            boolean loadApplied,
            OptionalLong calibratedWallMillis) {

        /** A channel that was never calibrated. */
        public ChannelView(
                String board,
                int channel,
                ChannelRole role,
                double volts,
                double expandedVolts,
                double celsius,
                double amperes,
                boolean loadApplied) {
            this(board, channel, role, volts, expandedVolts, celsius, amperes, loadApplied, OptionalLong.empty());
        }

        /** Whether its calibration is too old to go by; false where it never was calibrated. */
        public boolean isCalibrationOld(long nowWallMillis) {
            return calibratedWallMillis.isPresent()
                    && Calibration.isOld(calibratedWallMillis.getAsLong(), nowWallMillis);
        }
    }

    /**
     * One passage.
     *
     * @param card what is fixed of it, with the channel it is on now
     * @param sequence of the last entry of its journal by which something changed that a person goes by
     * @param remainingMillis event time the running watch has still to go
     * @param loadOn whether its load is known to be on
     * @param bonded whether its leads are bonded
     * @param seems what the terminals say of a load put on by hand, against what was said
     * @param standing what the passage waits for a person to do
     * @param past what happened, oldest first, the last 200
     */
    public record PassageView(
            PassageCard card,
            long sequence,
            Phase phase,
            String reason,
            int round,
            double ampereHours,
            double wattHours,
            long remainingMillis,
            boolean locked,
            boolean loadOn,
            boolean bonded,
            Optional<LoadStep> seems,
            List<Finding> findings,
            Set<Wish> standing,
            Set<Act> allowed,
            List<Past> past) {
        /** Of how much the past is kept. */
        public static final int PAST_KEPT = 200;

        public UUID id() {
            return card.id();
        }

        public String tag() {
            return card.cell().tag();
        }

        public String board() {
            return card.board();
        }

        public int channel() {
            return card.channel();
        }

        public long openedMillis() {
            return card.openedMillis();
        }

        /** Event time at which the rest that it is in began; empty where it is in none. */
        public Optional<Long> restingSince() {
            return phase != Phase.REST
                    ? Optional.empty()
                    : past.stream()
                            .filter(it ->
                                    it.kind() == Past.Kind.PHASE && it.what().equals(Phase.REST.name()))
                            .map(Past::eventMillis)
                            .reduce((earlier, later) -> later);
        }
    }

    /** Something that happened to a passage. */
    public record Past(long eventMillis, Kind kind, String what, String line) {
        /** The past of an event; empty for a wish. */
        static Optional<Past> of(long millis, Event event) {
            if (event instanceof Outcome.PhaseChanged changed) {
                return Optional.of(new Past(millis, Kind.PHASE, changed.to().name(), changed.reason()));
            }
            if (event instanceof Outcome.Raised raised) {
                Finding finding = raised.finding();
                return Optional.of(new Past(millis, Kind.RAISED, finding.kind().name(), finding.line()));
            }
            if (event instanceof Outcome.Cleared cleared) {
                return Optional.of(new Past(millis, Kind.CLEARED, cleared.kind().name(), ""));
            }
            return Optional.empty();
        }

        /** Which sort of thing. */
        public enum Kind {
            PHASE,
            RAISED,
            CLEARED
        }
    }

    /** The passage with this id. */
    public Optional<PassageView> passage(UUID id) {
        return passages.stream().filter(passage -> passage.id().equals(id)).findFirst();
    }

    /** The passage that is on a channel now. */
    public Optional<PassageView> on(String board, int channel) {
        return passages.stream()
                .filter(passage -> passage.board().equals(board)
                        && passage.channel() == channel
                        && !passage.phase().isOver())
                .findFirst();
    }
}
