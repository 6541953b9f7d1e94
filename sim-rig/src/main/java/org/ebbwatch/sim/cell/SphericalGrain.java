package org.ebbwatch.sim.cell;

import java.util.Arrays;

/**
 * Radial diffusion in a sphere of radius 1: ten shells, each 0.8 times as thick as the one inside it, stepped by
 * implicit Euler, so any step is stable. The matrix is fixed for a step length: its factors and its answer to a unit taken
 * through the surface are worked out once, a step costs two sweeps over the shells. The charge is kept exactly (to
 * rounding); a step through the surface shows at the surface at once as the drop over half the outermost shell.
 */
final class SphericalGrain extends Grain {
    private static final int SHELLS = 10;
    private static final double THINNING = 0.8;

    private final double diffusionSeconds;
    private final double[] volume = new double[SHELLS];
    private final double[] conductance = new double[SHELLS - 1];
    private final double skinOhms;

    private final double[] stateOfCharge = new double[SHELLS];
    private final double[] below = new double[SHELLS];
    private final double[] pivotInverse = new double[SHELLS];
    private final double[] answer = new double[SHELLS];
    private double stepSeconds;
    private double surfacePerShare;
    private double surface;

    SphericalGrain(double stateOfCharge, double diffusionSeconds) {
        this.diffusionSeconds = diffusionSeconds;
        double[] radius = shellRadii();
        for (int k = 0; k < SHELLS; k++) {
            volume[k] = cube(radius[k + 1]) - cube(radius[k]);
            this.stateOfCharge[k] = stateOfCharge;
        }
        for (int k = 0; k < SHELLS - 1; k++) {
            double apart = (radius[k + 2] - radius[k]) / 2;
            conductance[k] = 3 * radius[k + 1] * radius[k + 1] / apart / diffusionSeconds;
        }
        skinOhms = (1 - radius[SHELLS - 1]) / 2 * diffusionSeconds / 3;
        surface = stateOfCharge;
    }

    private static double[] shellRadii() {
        double[] radius = new double[SHELLS + 1];
        double thickness = 1;
        for (int k = 1; k <= SHELLS; k++) {
            radius[k] = radius[k - 1] + thickness;
            thickness *= THINNING;
        }
        for (int k = 1; k <= SHELLS; k++) {
            radius[k] /= radius[SHELLS];
        }
        return radius;
    }

    private static double cube(double number) {
        return number * number * number;
    }

    @Override
    void setStep(double seconds) {
        if (seconds == stepSeconds) {
            return;
        }
        stepSeconds = seconds;
        for (int k = 0; k < SHELLS; k++) {
            double inner = k == 0 ? 0 : seconds * conductance[k - 1];
            double outer = k == SHELLS - 1 ? 0 : seconds * conductance[k];
            double diagonal = volume[k] + inner + outer;
            if (k > 0) {
                below[k] = -inner * pivotInverse[k - 1];
                diagonal += inner * below[k];
            }
            pivotInverse[k] = 1 / diagonal;
        }
        Arrays.fill(answer, 0);
        answer[SHELLS - 1] = 1;
        solve(answer);
        surfacePerShare = answer[SHELLS - 1] + skinOhms / seconds;
    }

    /** Solves for the shells after a step; comes with the right-hand side, leaves with the answer. */
    private void solve(double[] shells) {
        for (int k = 1; k < SHELLS; k++) {
            shells[k] -= below[k] * shells[k - 1];
        }
        shells[SHELLS - 1] *= pivotInverse[SHELLS - 1];
        for (int k = SHELLS - 2; k >= 0; k--) {
            shells[k] = (shells[k] + stepSeconds * conductance[k] * shells[k + 1]) * pivotInverse[k];
        }
    }

    @Override
    double relax() {
        for (int k = 0; k < SHELLS; k++) {
            stateOfCharge[k] *= volume[k];
        }
        solve(stateOfCharge);
        surface = stateOfCharge[SHELLS - 1];
        return surface;
    }

    @Override
    double surfacePerShare() {
        return surfacePerShare;
    }

    @Override
    void take(double share) {
        for (int k = 0; k < SHELLS; k++) {
            stateOfCharge[k] -= share * answer[k];
        }
        surface -= share * surfacePerShare;
    }

    @Override
    double surface() {
        return surface;
    }

    @Override
    double mean() {
        double sum = 0;
        for (int k = 0; k < SHELLS; k++) {
            sum += volume[k] * stateOfCharge[k];
        }
        return sum;
    }

    @Override
    double energy(OcvTable table) {
        double sum = 0;
        for (int k = 0; k < SHELLS; k++) {
            sum += volume[k] * table.anodeEnergy(stateOfCharge[k]);
        }
        return sum;
    }

    @Override
    Grain copy() {
        SphericalGrain copy = new SphericalGrain(0, diffusionSeconds);
        System.arraycopy(stateOfCharge, 0, copy.stateOfCharge, 0, SHELLS);
        copy.surface = surface;
        if (stepSeconds > 0) {
            copy.setStep(stepSeconds);
        }
        return copy;
    }
}
