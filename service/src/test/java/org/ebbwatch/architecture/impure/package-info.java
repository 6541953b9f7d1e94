/** Classes that break the rules of the house, each in one way: the rules are tried on them. */
package org.ebbwatch.architecture.impure;
