/**
 * One morning as a state machine: {@code decide(state, order) -> events or refusal} and {@code
 * apply(state, event) -> state}, both pure and total, with the rights table and the one registry of
 * refusals.
 */
package sunup.board;
