package org.ebbwatch.rack;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ebbwatch.judge.procedure.CellString;

/** Finds the strings among the cells of a rack file: cells of one board that give the same name. */
final class StringReader {
    private final Map<String, List<Member>> strings = new LinkedHashMap<>();
    private final Set<String> incomplete = new HashSet<>();

    private record Member(CellEntry cell, String name, YamlMapping where) {}

    /** Notes that a cell says it is of a string. */
    void member(CellEntry cell, String name, YamlMapping where) {
        strings.computeIfAbsent(cell.board() + '/' + name, key -> new ArrayList<>())
                .add(new Member(cell, name, where));
    }

    /** Notes that a cell of it is faulty, which is told already: nothing more is said of the string. */
    void incomplete(String board, String name) {
        incomplete.add(board + '/' + name);
    }

    /** The cells, each with its string; adds a fault where the cells of one do not stand or hang together. */
    List<CellEntry> strung(List<CellEntry> cells) {
        Map<CellEntry, CellString> found = new LinkedHashMap<>();
        strings.forEach((key, members) -> {
            if (!incomplete.contains(key)) {
                string(members, found);
            }
        });
        return cells.stream()
                .map(cell -> cell.in(Optional.ofNullable(found.get(cell))))
                .toList();
    }

    private static void string(List<Member> members, Map<CellEntry, CellString> found) {
        List<Member> ordered = members.stream()
                .sorted(Comparator.comparingInt(member -> member.cell().channel()))
                .toList();
        Member first = ordered.get(0);
        int begin = first.cell().channel();
        if (ordered.size() == 1) {
            first.where()
                    .fault("string", "the string " + first.name() + " has one cell only; a string has at least two");
            return;
        }
        for (int i = 1; i < ordered.size(); i++) {
            Member member = ordered.get(i);
            CellEntry cell = member.cell();
            if (cell.channel() != begin + i) {
                member.where()
                        .fault(
                                "channel",
                                "the cells of the string " + member.name() + " stand on neighbouring channels;"
                                        + " none of it is on channel " + (begin + i));
                return;
            }
            if (cell.loadOhms() != first.cell().loadOhms()
                    || cell.switched() != first.cell().switched()
                    || cell.loadTolerancePercent() != first.cell().loadTolerancePercent()) {
                member.where()
                        .fault(
                                "loadOhms",
                                "the string " + member.name() + " has one load: its cells give the same loadOhms,"
                                        + " the same loadTolerancePercent and the same switched");
                return;
            }
        }
        LoadPower.check(first.cell(), ordered.size(), first.where());
        var string = new CellString(first.name(), begin, ordered.size());
        ordered.forEach(member -> found.put(member.cell(), string));
    }
}
