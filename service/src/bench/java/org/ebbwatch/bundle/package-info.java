/** How long a large bundle takes and how much memory: docs/benchmarks/bundle.md. */
package org.ebbwatch.bundle;
