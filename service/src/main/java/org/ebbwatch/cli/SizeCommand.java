package org.ebbwatch.cli;

import java.io.PrintWriter;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.ebbwatch.cli.Ebbwatch.Refusal;
import org.ebbwatch.intake.rule.CellChemistry;
import org.ebbwatch.intake.rule.Condition;
import org.ebbwatch.intake.rule.ProtectionBoard;
import org.ebbwatch.sizing.LoadSizing;
import org.ebbwatch.sizing.LoadWish;
import org.ebbwatch.sizing.LoadWish.Surroundings;
import org.ebbwatch.sizing.Mounting;
import org.ebbwatch.sizing.Pace;
import org.ebbwatch.sizing.PreferredSeries;
import org.ebbwatch.sizing.ResistorBuild;
import org.ebbwatch.sizing.Room;
import org.ebbwatch.sizing.SizingAnswer;
import org.ebbwatch.sizing.SizingAnswer.Sized;
import org.ebbwatch.sizing.Stock;
import org.ebbwatch.sizing.WireGauge;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Names a load for a cell. */
@Command(
        name = "size",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Names a load for a cell or a pack: which resistors, how warm they get, how long it takes. See docs/sizing.md.",
            "Exit code 0: a load; 1: such a load is dangerous or cannot be, and why."
        })
final class SizeCommand implements Callable<Integer> {
    @Option(
            names = "--volts",
            required = true,
            paramLabel = "V",
            description = "measured now, at rest, across the whole")
    private double volts;

    @Option(names = "--ampere-hours", required = true, paramLabel = "AH", description = "rated capacity of one cell")
    private double ampereHours;

    @Option(
            names = "--chemistry",
            paramLabel = "NAME",
            defaultValue = "unknown",
            description = "nmc, nca, lco, lmo, lfp or unknown (${DEFAULT-VALUE})")
    private String chemistry;

    @Option(
            names = "--condition",
            paramLabel = "NAME",
            defaultValue = "unknown",
            description = "intact, unknown, swollen, dented, wet, warm, casing-torn, smell-of-solvent or leaking"
                    + " (${DEFAULT-VALUE}, which is treated as damaged)")
    private String condition;

    @Option(
            names = "--protection-board",
            paramLabel = "NAME",
            defaultValue = "unknown",
            description = "none, removed, present or unknown (${DEFAULT-VALUE})")
    private String protectionBoard;

    @Option(
            names = "--in-series",
            paramLabel = "N",
            defaultValue = "1",
            description = "cells of the pack (${DEFAULT-VALUE})")
    private int cellsInSeries;

    @Option(names = "--balance-leads", description = "each cell of the pack has a lead of its own")
    private boolean balanceLeads;

    @Option(names = "--hours", paramLabel = "H", description = "wish: down to 0.1 V under the load within so long")
    private Double hours;

    @Option(
            names = "--rate",
            paramLabel = "RATE",
            description =
                    "or wish: no faster than this, such as C/10; C/10 where nothing is said, C/20 for damaged cells")
    private String rate;

    @Option(
            names = "--drawer",
            paramLabel = "LIST",
            description = "what resistors there are, as OHMS:WATTS[:COUNT], such as 22:10,10:5:4; up to 4 make a load")
    private String drawer;

    @Option(
            names = "--values",
            paramLabel = "SERIES",
            defaultValue = "E24",
            description = "or which are sold: E24 or E96 (${DEFAULT-VALUE})")
    private String values;

    @Option(
            names = "--watts",
            paramLabel = "W",
            description = "rating of those that are sold; any where nothing is said")
    private Double watts;

    @Option(
            names = "--build",
            paramLabel = "NAME",
            defaultValue = "cement",
            description = "cement, aluminium or film (${DEFAULT-VALUE})")
    private String build;

    @Option(names = "--heatsink", description = "they sit on the heatsink their maker rates them on")
    private boolean heatsink;

    @Option(
            names = "--air",
            paramLabel = "C",
            defaultValue = "25",
            description = "air around them, degrees (${DEFAULT-VALUE})")
    private double airCelsius;

    @Option(names = "--awg", paramLabel = "N", description = "gauge of the wire: 18, 20, 22, 24, 26 or 28")
    private Integer awg;

    @Option(
            names = "--wire-metres",
            paramLabel = "M",
            defaultValue = "1",
            description = "length of the wire, there and back (${DEFAULT-VALUE})")
    private double wireMetres;

    @Option(
            names = "--cells",
            paramLabel = "N",
            defaultValue = "1",
            description = "how many on the rack (${DEFAULT-VALUE})")
    private int cells;

    @Option(
            names = "--room",
            paramLabel = "M3",
            defaultValue = "30",
            description = "size of the room (${DEFAULT-VALUE})")
    private double cubicMetres;

    @Option(
            names = "--rise",
            paramLabel = "K",
            defaultValue = "3",
            description = "by how much it may warm (${DEFAULT-VALUE})")
    private double riseKelvin;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws Refusal {
        SizingAnswer answer = LoadSizing.size(wish());
        PrintWriter out = spec.commandLine().getOut();
        SizingText.lines(answer).forEach(out::println);
        out.flush();
        return answer instanceof Sized ? 0 : 1;
    }

    private LoadWish wish() throws Refusal {
        try {
            Condition its = named("--condition", condition, Condition.values());
            return new LoadWish(
                    named("--chemistry", chemistry, CellChemistry.values()),
                    volts,
                    ampereHours,
                    cellsInSeries,
                    balanceLeads,
                    its,
                    named("--protection-board", protectionBoard, ProtectionBoard.values()),
                    pace(its),
                    stock(),
                    new Surroundings(
                            airCelsius,
                            heatsink ? Mounting.HEATSINK : Mounting.FREE_AIR,
                            gauge(),
                            wireMetres,
                            new Room(cubicMetres, riseKelvin)),
                    cells);
        } catch (IllegalArgumentException e) {
            throw new Refusal(e.getMessage() + ". `ebbwatch size --help` says what each option takes.");
        }
    }

    private Pace pace(Condition its) {
        if (hours != null && rate != null) {
            throw new IllegalArgumentException("wish for a time or for a rate, not for both");
        }
        if (hours != null) {
            return new Pace.Within(hours);
        }
        return rate == null ? Pace.usual(its) : Pace.Rate.of(rate);
    }

    private Stock stock() {
        ResistorBuild its = named("--build", build, ResistorBuild.values());
        if (drawer != null) {
            return Stock.Drawer.of(drawer, its);
        }
        return new Stock.Bought(named("--values", values, PreferredSeries.values()), its, Optional.ofNullable(watts));
    }

    private Optional<WireGauge> gauge() {
        return Optional.ofNullable(awg).map(number -> WireGauge.ofNumber(number)
                .orElseThrow(
                        () -> new IllegalArgumentException("--awg takes 18, 20, 22, 24, 26 or 28, not " + number)));
    }

    private static <E extends Enum<E>> E named(String option, String text, E[] values) {
        return Arrays.stream(values)
                .filter(value -> key(value).equalsIgnoreCase(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(option + " takes "
                        + Arrays.stream(values).map(SizeCommand::key).collect(Collectors.joining(", ")) + "; not "
                        + text));
    }

    private static String key(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
