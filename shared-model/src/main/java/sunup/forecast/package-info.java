/**
 * The computation that the tool exists for: the rest of a morning simulated many times from all
 * that is known now. Depends on nothing else of the project.
 */
package sunup.forecast;
