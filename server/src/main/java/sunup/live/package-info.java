/** The wire: what screens get and send over WebSockets, and who makes it. */
package sunup.live;
