package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.board.MorningId;
import sunup.wire.Audience;

/**
 * The screens of a morning on this node. What all are told is one task for each event loop and not
 * one for each screen. A screen gets what it is told in the order in which the lane told it, since
 * an event loop takes its tasks in turn. Kept in the lane.
 */
final class Crowd {
  /** Between so many screens an event loop may read what came, so that touches don't wait. */
  static final int TOGETHER_MOST = 256;

  private static final Logger LOG = LoggerFactory.getLogger(Crowd.class);

  private final MorningId morning;
  private final Set<Screen> screens = new LinkedHashSet<>();

  /** Null after a screen came or went. */
  private List<Group> groups;

  /**
   * Screens that are told by one task.
   *
   * @param loop null for the lane
   */
  private record Group(Loop loop, List<Screen> screens) {}

  Crowd(MorningId morning) {
    this.morning = morning;
  }

  void add(Screen screen) {
    screens.add(screen);
    groups = null;
  }

  void remove(Screen screen) {
    if (screens.remove(screen)) {
      groups = null;
    }
  }

  boolean has(Screen screen) {
    return screens.contains(screen);
  }

  void clear() {
    screens.clear();
    groups = null;
  }

  /**
   * Each screen gets what was made for its audience, if anything was. One that left meanwhile may
   * still get what was told before.
   */
  void tell(Map<Audience, Buffer> made, BiConsumer<Screen, Buffer> how) {
    if (made.isEmpty()) {
      return;
    }
    if (groups == null) {
      groups = grouped();
    }
    for (Group group : groups) {
      if (group.loop() == null) {
        tell(group.screens(), made, how);
      } else {
        group.loop().run(() -> tell(group.screens(), made, how));
      }
    }
  }

  /** One screen that fails is no reason to leave out the others; it finds the gap by itself. */
  private void tell(List<Screen> some, Map<Audience, Buffer> made, BiConsumer<Screen, Buffer> how) {
    for (Screen screen : some) {
      guarded(
          () -> {
            Buffer one = made.get(screen.audience());
            if (one != null) {
              how.accept(screen, one);
            }
          });
    }
  }

  void guarded(Runnable telling) {
    try {
      telling.run();
    } catch (RuntimeException e) {
      LOG.error("a screen of {} could not be told", morning, e);
    }
  }

  private List<Group> grouped() {
    Map<Loop, List<Screen>> byLoop = new HashMap<>();
    for (Screen screen : screens) {
      byLoop.computeIfAbsent(screen.loop(), loop -> new ArrayList<>()).add(screen);
    }
    List<Group> made = new ArrayList<>();
    byLoop.forEach(
        (loop, all) -> {
          for (int from = 0; from < all.size(); from += TOGETHER_MOST) {
            int to = Math.min(all.size(), from + TOGETHER_MOST);
            made.add(new Group(loop, List.copyOf(all.subList(from, to))));
          }
        });
    return made;
  }
}
