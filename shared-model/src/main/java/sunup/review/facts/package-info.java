/**
 * One row per first case, made from the journal of a closed morning and the log of what the board
 * said then. Names roles, rooms and things, never a person.
 */
package sunup.review.facts;
