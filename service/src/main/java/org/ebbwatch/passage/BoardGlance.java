package org.ebbwatch.passage;

import java.util.List;
import org.ebbwatch.calibration.Calibration;

/**
 * What is known of one board besides what people are shown.
 *
 * @param heard whether it is connected and not silent
 * @param detail of its link, a sentence
 * @param clockOdd whether its clock was found wrong
 * @param losses how often its link was lost since the service began
 * @param intervalMillis between its scans; 0 while it is not known
 * @param channels how many it has; 0 while it is not known
 * @param ambientCelsius of its ambient sensor; NaN where there is none to believe
 * @param calibrations of its channels, at most one each
 */
public record BoardGlance(
        String name,
        boolean heard,
        String detail,
        boolean clockOdd,
        long losses,
        long intervalMillis,
        int channels,
        double ambientCelsius,
        List<Calibration> calibrations) {}
