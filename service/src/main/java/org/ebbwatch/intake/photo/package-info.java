/**
 * Photos as they are kept: told by their content, and without what a camera wrote beside the picture. Pure: knows nothing but arrays
 * of bytes.
 */
package org.ebbwatch.intake.photo;
