/**
 * Statistics with published answers, knowing nothing of mornings: intervals, tests, corrections,
 * updates. REVIEW.md beside this module defines every number and names its source.
 */
package sunup.review.stats;
