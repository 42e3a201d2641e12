/** Hand-made stand-ins for the clock, the owner, the outlook and a screen. */
package sunup.live.fake;
