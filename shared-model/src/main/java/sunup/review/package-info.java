/**
 * What the facts of many mornings say: measures, comparisons, cost. REVIEW.md beside this module
 * defines every number.
 */
package sunup.review;
