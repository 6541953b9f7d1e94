/**
 * What people have to do next, and when somebody must be there. Pure: made of a view of the rack, the hours of the night and a moment;
 * depends on {@code passage}'s views, {@code judge} and the alarm book's night.
 */
package org.ebbwatch.plan;
