package org.ebbwatch.passage;

import java.util.Optional;
import org.ebbwatch.judge.estimate.NoiseMeter;
import org.ebbwatch.judge.estimate.RestCurve;
import org.ebbwatch.judge.estimate.RestFit;

/**
 * What a resting cell's voltage is expected to be at the end of its rest: for people to look at, no verdict hangs on it.
 *
 * @param eventMillis the end of the rest, if nothing starts it anew
 * @param medianVolts as likely above as below
 * @param lowestVolts with {@code highestVolts} an interval that holds in 95 of 100 cases
 */
public record RestPrediction(long eventMillis, double medianVolts, double lowestVolts, double highestVolts) {

    /** Of the readings since the load came off; empty while they are too few. */
    static Optional<RestPrediction> of(ScanReader reader, long offMillis, long untilMillis, long restMillis) {
        var curve = new RestCurve();
        curve.begin(offMillis);
        var noise = new NoiseMeter();
        double[] resolution = {0};
        reader.read(offMillis, untilMillis, scan -> {
            curve.add(scan.eventMillis(), scan.volts());
            noise.add(scan.volts(), scan.resolutionVolts());
            resolution[0] = scan.resolutionVolts();
        });
        return RestFit.of(curve, restMillis / 1000.0, noise.deviation(resolution[0]))
                .map(fit ->
                        new RestPrediction(offMillis + restMillis, fit.volts(), fit.lowestVolts(), fit.highestVolts()));
    }
}
