/**
 * Moves that may still help: which there are, what each is expected to save over the suite, and
 * what an accepted one changes in the forecast's input. Pure. MOVES.md beside this module.
 */
package sunup.moves;
