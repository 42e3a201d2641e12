/**
 * The deterministic simulation: actors, journal, network and clients under a simulated clock, with
 * faults drawn from a seed. The same seed gives the same history.
 */
package sunup.simulated;
