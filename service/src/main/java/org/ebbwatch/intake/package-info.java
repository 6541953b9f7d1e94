/**
 * The cards of cells: what is written down of a cell before it comes to the rack, who wrote what when, and its photo. Depends on
 * {@code store}, {@code passage} and the rules in {@code intake.rule}.
 */
package org.ebbwatch.intake;
