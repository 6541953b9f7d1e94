package org.ebbwatch.sim.scenario;

/**
 * The room: a sine over each day of event time.
 *
 * @param celsius mean temperature, -20 to 50
 * @param swingKelvin warmest minus coldest, 0 to 40
 * @param startHour hour of the day at which the scenario starts, 0 to 24; the warmest is 15
 */
public record AmbientSpec(double celsius, double swingKelvin, double startHour) {
    /** 21 degrees, 3 K of swing, from 9 in the morning. */
    public static final AmbientSpec USUAL = new AmbientSpec(21, 3, 9);

    public AmbientSpec {
        Ranges.within("celsius", celsius, -20, 50);
        Ranges.within("swingKelvin", swingKelvin, 0, 40);
        Ranges.within("startHour", startHour, 0, 24);
    }
}
