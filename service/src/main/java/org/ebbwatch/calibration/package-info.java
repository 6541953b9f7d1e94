/**
 * From a board's counts to volts and degrees with their uncertainty. Pure; depends on the rig protocol's records alone.
 */
package org.ebbwatch.calibration;
