package org.ebbwatch.web;

import io.micronaut.core.annotation.Nullable;
import io.micronaut.http.annotation.Controller;
import io.micronaut.http.annotation.Get;
import io.micronaut.http.annotation.QueryValue;
import io.micronaut.scheduling.TaskExecutors;
import io.micronaut.scheduling.annotation.ExecuteOn;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Optional;
import java.util.stream.Collectors;
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
import org.ebbwatch.sizing.SizingAnswer.Refused;
import org.ebbwatch.sizing.SizingAnswer.Sized;
import org.ebbwatch.sizing.Stock;
import org.ebbwatch.sizing.WireGauge;
import org.ebbwatch.web.answer.SizingBody;
import org.ebbwatch.web.problem.Problem;
import org.ebbwatch.web.problem.ProblemException;
import org.ebbwatch.web.problem.ProblemKind;

/** Which load a cell is emptied through. Changes nothing. */
@Controller("/api/v1/sizing")
@ExecuteOn(TaskExecutors.BLOCKING)
@ApiResponse(responseCode = "200", description = "A load", useReturnTypeSchema = true)
@ApiResponse(
        responseCode = "4XX",
        description = "No load is named for this, or it cannot be read",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@ApiResponse(
        responseCode = "5XX",
        description = "Failed",
        content = @Content(mediaType = "application/problem+json", schema = @Schema(implementation = Problem.class)))
@Tag(name = "sizing")
class SizingRoute {
    private static final double USUAL_AIR_CELSIUS = 25;
    private static final double USUAL_WIRE_METRES = 1;
    private static final double USUAL_CUBIC_METRES = 30;
    private static final double USUAL_RISE_KELVIN = 3;

    /**
     * Names a load for a cell or a pack, with how warm it gets and how long it takes.
     *
     * @param volts measured now, at rest, across the whole
     * @param ampereHours rated capacity of one cell
     * @param chemistry unknown where nothing is said
     * @param condition UNKNOWN where nothing is said, which is treated as damaged
     * @param protectionBoard UNKNOWN where nothing is said
     * @param inSeries cells of the pack; 1 where nothing is said
     * @param balanceLeads whether each cell of the pack has a lead of its own
     * @param hours wish: down to 0.1 V under the load within so long
     * @param rate or wish: no faster than this, such as C/10; C/10 where nothing is said, C/20 for damaged cells
     * @param drawer what resistors there are, as OHMS:WATTS or OHMS:WATTS:COUNT, separated by commas
     * @param values or which are sold; E24 where nothing is said
     * @param watts rating of those that are sold
     * @param build of the resistors; CEMENT where nothing is said
     * @param mounting of the resistors; FREE_AIR where nothing is said
     * @param airCelsius around them; 25 where nothing is said
     * @param awg gauge of the wire: 18, 20, 22, 24, 26 or 28
     * @param wireMetres its length, there and back; 1 where nothing is said
     * @param cells how many on the rack; 1 where nothing is said
     * @param roomCubicMetres size of the room; 30 where nothing is said
     * @param riseKelvin by how much it may warm; 3 where nothing is said
     */
    @Get
    SizingBody size(
            @Nullable @QueryValue Double volts,
            @Nullable @QueryValue Double ampereHours,
            @Nullable @QueryValue CellChemistry chemistry,
            @Nullable @QueryValue Condition condition,
            @Nullable @QueryValue ProtectionBoard protectionBoard,
            @Nullable @QueryValue Integer inSeries,
            @Nullable @QueryValue Boolean balanceLeads,
            @Nullable @QueryValue Double hours,
            @Nullable @QueryValue String rate,
            @Nullable @QueryValue String drawer,
            @Nullable @QueryValue PreferredSeries values,
            @Nullable @QueryValue Double watts,
            @Nullable @QueryValue ResistorBuild build,
            @Nullable @QueryValue Mounting mounting,
            @Nullable @QueryValue Double airCelsius,
            @Nullable @QueryValue Integer awg,
            @Nullable @QueryValue Double wireMetres,
            @Nullable @QueryValue Integer cells,
            @Nullable @QueryValue Double roomCubicMetres,
            @Nullable @QueryValue Double riseKelvin) {
        try {
            Condition its = or(condition, Condition.UNKNOWN);
            var surroundings = new Surroundings(
                    or(airCelsius, USUAL_AIR_CELSIUS),
                    or(mounting, Mounting.FREE_AIR),
                    Optional.ofNullable(awg).map(SizingRoute::gauge),
                    or(wireMetres, USUAL_WIRE_METRES),
                    new Room(or(roomCubicMetres, USUAL_CUBIC_METRES), or(riseKelvin, USUAL_RISE_KELVIN)));
            return answer(LoadSizing.size(new LoadWish(
                    or(chemistry, CellChemistry.UNKNOWN),
                    needed("volts", volts),
                    needed("ampereHours", ampereHours),
                    or(inSeries, 1),
                    or(balanceLeads, false),
                    its,
                    or(protectionBoard, ProtectionBoard.UNKNOWN),
                    pace(its, hours, rate),
                    stock(drawer, or(values, PreferredSeries.E24), watts, or(build, ResistorBuild.CEMENT)),
                    surroundings,
                    or(cells, 1))));
        } catch (IllegalArgumentException e) {
            throw new ProblemException(ProblemKind.BAD_PARAMETER, e.getMessage() + '.');
        }
    }

    private static SizingBody answer(SizingAnswer answer) {
        if (answer instanceof Sized sized) {
            return SizingBody.of(sized);
        }
        throw new ProblemException(
                ProblemKind.NO_LOAD,
                ((Refused) answer)
                        .reasons().stream()
                                .map(reason -> reason.why() + ' ' + reason.instead())
                                .collect(Collectors.joining(" ")));
    }

    private static Pace pace(Condition condition, @Nullable Double hours, @Nullable String rate) {
        if (hours != null && rate != null) {
            throw new IllegalArgumentException("wish for hours or for a rate, not for both");
        }
        if (hours != null) {
            return new Pace.Within(hours);
        }
        return rate == null ? Pace.usual(condition) : Pace.Rate.of(rate);
    }

    private static Stock stock(
            @Nullable String drawer, PreferredSeries values, @Nullable Double watts, ResistorBuild build) {
        return drawer == null
                ? new Stock.Bought(values, build, Optional.ofNullable(watts))
                : Stock.Drawer.of(drawer, build);
    }

    private static WireGauge gauge(int number) {
        return WireGauge.ofNumber(number)
                .orElseThrow(() -> new IllegalArgumentException("awg takes 18, 20, 22, 24, 26 or 28, not " + number));
    }

    private static <T> T or(@Nullable T given, T usual) {
        return given == null ? usual : given;
    }

    private static double needed(String name, @Nullable Double given) {
        if (given == null) {
            throw new IllegalArgumentException("the parameter " + name + " is missing; it takes a number");
        }
        return given;
    }
}
