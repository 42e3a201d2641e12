/**
 * Whether a journal is still what it was: chains walked, mornings replayed, and heads that were
 * signed with a key kept elsewhere compared with those that stand.
 */
package sunup.audit;
