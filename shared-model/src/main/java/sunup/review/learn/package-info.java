/**
 * What closed mornings teach the next one: durations by rule 4's weak prior, how people report,
 * forgotten touches; as a value that is frozen into an opening. REVIEW.md beside this module
 * defines every number.
 */
package sunup.review.learn;
