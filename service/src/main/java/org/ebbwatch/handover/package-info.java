/**
 * Handing cells over: a covering sheet, a table and labels for a choice of bundles. Says what the bundles say, leaves room for what
 * only people know, and shows where rules differ without deciding. May use {@code evidence}, {@code passage}, {@code paper} and
 * {@code csv}.
 */
package org.ebbwatch.handover;
