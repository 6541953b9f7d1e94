/** A person at the page: a real browser in front of the real server and a rack whose time goes on only when a test says so. */
package org.ebbwatch.browser;
