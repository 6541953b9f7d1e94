/**
 * What the outside is told of the rack: records with units in their names, made from a {@code RackView}. Depends on
 * {@code passage} and the enums it shows; what is not a number is null here, never NaN.
 */
package org.ebbwatch.web.answer;
