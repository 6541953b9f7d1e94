/**
 * The named, versioned limits and times a passage is judged by, and the description of the cell they are applied to.
 * Pure values without behaviour; every default carries its origin.
 */
package org.ebbwatch.judge.procedure;
