/**
 * What happens on the rack, told while it happens, as server-sent events. Depends on {@code passage.Happenings} and on the web's
 * clock and answers.
 */
package org.ebbwatch.web.live;
