package sunup.wire;

import java.util.List;

/** A copy of the morning that is asked for: its changes, made one after the other. */
public record TryAsk(List<TryChange> changes) {
  /** More at once say nothing about any of them. */
  public static final int CHANGES_AT_MOST = 8;
}
