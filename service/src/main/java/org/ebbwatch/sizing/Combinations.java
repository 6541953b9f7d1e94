package org.ebbwatch.sizing;

import java.util.ArrayList;
import java.util.List;
import org.ebbwatch.sizing.Network.Carried;
import org.ebbwatch.sizing.Stock.Drawer.Kind;

/** Every load of up to four resistors of a drawer that series and parallel make; a bridge is not among them. */
final class Combinations {
    private final List<Kind> kinds;
    private final List<Network> all = new ArrayList<>();

    Combinations(List<Kind> kinds) {
        this.kinds = kinds;
        List<Network> singles = new ArrayList<>();
        kinds.forEach(kind -> singles.add(new Network.Single(kind.resistor())));
        List<Network> pairs = joined(singles, singles);
        List<Network> threes = joined(singles, pairs);
        all.addAll(singles);
        all.addAll(pairs);
        all.addAll(threes);
        all.addAll(joined(singles, threes));
        all.addAll(joined(pairs, pairs));
    }

    List<Network> all() {
        return all;
    }

    private List<Network> joined(List<Network> some, List<Network> others) {
        List<Network> made = new ArrayList<>();
        for (int i = 0; i < some.size(); i++) {
            for (int j = some == others ? i : 0; j < others.size(); j++) {
                Network series = Network.inSeries(some.get(i), others.get(j));
                if (areThere(series)) {
                    made.add(series);
                    made.add(Network.inParallel(some.get(i), others.get(j)));
                }
            }
        }
        return made;
    }

    private boolean areThere(Network network) {
        List<Carried> pieces = network.carried(0);
        return kinds.stream()
                .allMatch(kind -> pieces.stream()
                                .filter(piece -> piece.resistor().equals(kind.resistor()))
                                .count()
                        <= kind.count());
    }
}
