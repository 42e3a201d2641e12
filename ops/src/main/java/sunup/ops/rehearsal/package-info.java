/**
 * A simulated hospital. From a plan, a story and a seed it plays a true morning by itself (what
 * people do, how long it takes, what is missing) and what they report of it and when; a player then
 * sends the reports through real sockets. It knows nothing of how the board forecasts, so that the
 * board can be judged against it.
 */
package sunup.ops.rehearsal;
