package org.ebbwatch.web.answer;

import io.micronaut.serde.annotation.Serdeable;
import java.util.List;
import org.ebbwatch.judge.Act;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.passage.RackView.Past;

/**
 * One passage in full.
 *
 * @param passage where it stands
 * @param allowed what a person may do to it now
 * @param past what happened to it, oldest first, the last 200
 */
@Serdeable
public record PassageAnswer(PassageShort passage, List<Act> allowed, List<Happening> past) {

    static PassageAnswer of(PassageView passage) {
        return new PassageAnswer(
                PassageShort.of(passage),
                passage.allowed().stream().sorted().toList(),
                passage.past().stream().map(Happening::of).toList());
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
