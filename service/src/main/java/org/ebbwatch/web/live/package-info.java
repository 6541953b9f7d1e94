/**
 * What happens on the rack, told while it happens, as server-sent events. Depends on {@code passage.Happenings} and on the host's
 * clock and the web's answers.
 */
package org.ebbwatch.web.live;
