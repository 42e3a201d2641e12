package sunup.live;

/** So many at once, so many a second in the long run. Not thread-safe. */
final class TokenBucket {
  private final int capacity;
  private final double perMs;
  private double tokens;
  private long lastMs;

  TokenBucket(int capacity, double perSecond, long nowMs) {
    this.capacity = capacity;
    this.perMs = perSecond / 1_000;
    this.tokens = capacity;
    this.lastMs = nowMs;
  }

  boolean take(long nowMs) {
    tokens = Math.min(capacity, tokens + Math.max(0, nowMs - lastMs) * perMs);
    lastMs = nowMs;
    if (tokens < 1) {
      return false;
    }
    tokens -= 1;
    return true;
  }
}
