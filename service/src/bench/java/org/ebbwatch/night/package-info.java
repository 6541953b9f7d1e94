/**
 * The night harness: tens of thousands of simulated passages that prove the judge or show where it is wrong. A tool beside the
 * tests, never inside them; nothing of it is shipped. May use the judge, the calibration and the simulator, no database.
 */
package org.ebbwatch.night;
