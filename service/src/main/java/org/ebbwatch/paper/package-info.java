/**
 * Printed pages as tagged PDF (ISO 32000, 14.8): A4, black and greys, one embedded typeface. Knows how to set headings, paragraphs,
 * tables and figures, and nothing of what they say; depends on the PDF library alone. The same calls make the same bytes.
 */
package org.ebbwatch.paper;
