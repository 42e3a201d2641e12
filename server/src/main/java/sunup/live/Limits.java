package sunup.live;

/**
 * What one socket may take up, and all of them. Each limit and what happens beyond it is listed in
 * {@code PROTOCOL.md}. Times are real milliseconds, sizes bytes.
 *
 * @param messageBytesMax longest message from a screen
 * @param messagesPerSecond messages a second from a socket in the long run
 * @param messagesBurst messages that may come at once
 * @param strikesMax messages beyond the rate before the socket is closed
 * @param helloMs time from the handshake to hello
 * @param pingMs between two pings
 * @param silentMs without a message or pong until a socket counts as gone
 * @param socketsMax open sockets
 * @param socketsPerAddressMax open sockets from one address
 * @param inFlightMax commands of one socket that wait for their answer
 * @param pendingBytesSoft unsent bytes beyond which frames are left out and a view is owed
 * @param pendingBytesMax unsent bytes beyond which the socket is closed
 * @param behindMs how long a socket may owe its view
 */
public record Limits(
    int messageBytesMax,
    int messagesPerSecond,
    int messagesBurst,
    int strikesMax,
    int helloMs,
    int pingMs,
    int silentMs,
    int socketsMax,
    int socketsPerAddressMax,
    int inFlightMax,
    int pendingBytesSoft,
    int pendingBytesMax,
    int behindMs) {
  public static final Limits DEFAULT =
      new Limits(
          16 * 1024,
          20,
          60,
          60,
          5_000,
          20_000,
          60_000,
          4_096,
          1_024,
          64,
          256 * 1024,
          4 * 1024 * 1024,
          30_000);

  /** The same where so many sockets may come from one address. */
  public Limits fromOneAddress(int sockets) {
    return new Limits(
        messageBytesMax,
        messagesPerSecond,
        messagesBurst,
        strikesMax,
        helloMs,
        pingMs,
        silentMs,
        socketsMax,
        sockets,
        inFlightMax,
        pendingBytesSoft,
        pendingBytesMax,
        behindMs);
  }
}
