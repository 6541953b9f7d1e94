package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import org.ebbwatch.judge.Act;
import org.ebbwatch.judge.procedure.Procedure;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;

/**
 * One passage in full.
 *
 * @param passage where it stands
 * @param limits what it is judged by
 * @param allowed what a person may do to it now
 * @param past what happened to it, oldest first, the last 200
 */
@Serdeable
public record PassageAnswer(PassageShort passage, Limits limits, List<Act> allowed, List<Happening> past) {

    static PassageAnswer of(PassageView passage) {
        return new PassageAnswer(
                PassageShort.of(passage),
                Limits.of(passage.card().procedure()),
                passage.allowed().stream().sorted().toList(),
                passage.past().stream().map(Happening::of).toList());
    }

    /**
     * The limits of its procedure that a person goes by; volts are held against the voltage and its uncertainty together.
     *
     * @param procedure its name
     * @param version of the procedure
     * @param drainVolts on the load
     * @param holdMillis for so long at first
     * @param restVolts with the load off
     * @param restMillis after so long
     * @param soakMillis bonded and watched for so long
     */
    @Serdeable
    public record Limits(
            String procedure,
            int version,
            double drainVolts,
            long holdMillis,
            double restVolts,
            long restMillis,
            long soakMillis) {
        static Limits of(Procedure procedure) {
            return new Limits(
                    procedure.name(),
                    procedure.version(),
                    procedure.drain().limitVolts(),
                    procedure.drain().holdMillis(),
                    procedure.rest().limitVolts(),
                    procedure.rest().leastMillis(),
                    procedure.tieOff().watchMillis());
        }
    }

    /**
     * Something that happened to the passage.
     *
     * @param eventMillis event time
     * @param kind which sort of thing
     * @param what the phase or the finding kind
     * @param line in words; may be empty
     */
    @Serdeable
    public record Happening(long eventMillis, Past.Kind kind, String what, String line) {
        static Happening of(Past past) {
            return new Happening(past.eventMillis(), past.kind(), past.what(), past.line());
        }
    }
}
