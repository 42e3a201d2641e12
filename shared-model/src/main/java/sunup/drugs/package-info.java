/**
 * Drugs of a case: classes with their label colours, lettering, how long what is drawn stays
 * usable, scans of packages, and the count of controlled drugs. See DRUGS.md.
 */
package sunup.drugs;
