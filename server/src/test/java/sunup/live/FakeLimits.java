package sunup.live;

/** Limits that tests reach sooner. */
final class FakeLimits {
  /** So that no timer fires while a busy machine takes its time. */
  private static final int LONG_MS = 600_000;

  private FakeLimits() {}

  static Limits sockets(int perAddress) {
    Limits d = Limits.DEFAULT;
    return new Limits(
        d.messageBytesMax(),
        d.messagesPerSecond(),
        d.messagesBurst(),
        d.strikesMax(),
        LONG_MS,
        d.pingMs(),
        d.silentMs(),
        d.socketsMax(),
        perAddress,
        d.inFlightMax(),
        d.pendingBytesSoft(),
        d.pendingBytesMax(),
        d.behindMs());
  }

  /** Timers that fire within real milliseconds; ages are still by the clock that is given. */
  static Limits quickTimers(int helloMs, int pingMs) {
    Limits d = Limits.DEFAULT;
    return new Limits(
        d.messageBytesMax(),
        d.messagesPerSecond(),
        d.messagesBurst(),
        d.strikesMax(),
        helloMs,
        pingMs,
        d.silentMs(),
        d.socketsMax(),
        d.socketsPerAddressMax(),
        d.inFlightMax(),
        d.pendingBytesSoft(),
        d.pendingBytesMax(),
        d.behindMs());
  }

  /** No timer fires, however fast the test lets time pass. */
  static Limits patient() {
    return quickTimers(LONG_MS, LONG_MS);
  }

  /** Little may wait to be sent, any number of messages may come, and silence is forgiven. */
  static Limits slow(int softBytes, int maxBytes, int behindMs) {
    Limits d = Limits.DEFAULT;
    int many = 10_000_000;
    return new Limits(
        d.messageBytesMax(),
        many,
        many,
        many,
        LONG_MS,
        20,
        LONG_MS,
        d.socketsMax(),
        d.socketsPerAddressMax(),
        d.inFlightMax(),
        softBytes,
        maxBytes,
        behindMs);
  }
}
