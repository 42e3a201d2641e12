package sunup.journal;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sunup.board.Event;

/**
 * The types of events that a program reads, and those that it may write without asking the nodes
 * beside it.
 *
 * @param reads all that it reads
 * @param settled what every Sunup reads that can be beside it; part of {@code reads}
 */
public record EventTypes(Set<String> reads, Set<String> settled) {
  /** Left out where a node beside it could not read it: the morning then goes by its sheets. */
  public static final String LEARNED = "lessons-frozen";

  /**
   * What every Sunup of several nodes reads. A new type is put here a version later than into the
   * program: until then it is written only when all nodes say that they read it.
   */
  private static final Set<String> SETTLED =
      Set.of(
          "case-added",
          "case-cancelled",
          "case-changed",
          "cases-swapped",
          "fault-taken",
          "handed-over",
          "help-answered",
          "help-asked",
          "holdup-taken",
          "item-begun",
          "item-expected",
          "item-faulted",
          "item-good",
          "item-left-out",
          "item-mended",
          "item-reopened",
          "item-witnessed",
          "later-agreed",
          "morning-closed",
          "morning-opened",
          "morning-planned",
          "move-accepted",
          "move-asked",
          "move-declined",
          "move-done",
          "move-withdrawn",
          "noted",
          "person-added",
          "person-arrived",
          "person-expected",
          "person-joined",
          "person-left",
          "place-opening",
          "ready-reported",
          "reason-agreed",
          "reason-disputed",
          "reason-given",
          "room-used",
          "section-swept",
          "step-reached",
          "touch-undone",
          "unit-claimed",
          "unit-promised",
          "unit-released",
          "word-kept");

  private static final Map<Class<?>, String> NAMES =
      Arrays.stream(Event.class.getAnnotation(JsonSubTypes.class).value())
          .collect(Collectors.toUnmodifiableMap(JsonSubTypes.Type::value, t -> t.name()));

  public EventTypes {
    reads = Set.copyOf(reads);
    settled = Set.copyOf(settled);
    if (!reads.containsAll(settled)) {
      throw new IllegalArgumentException("what is settled is read");
    }
  }

  /** What this program reads. */
  public static EventTypes ofProgram() {
    return new EventTypes(Set.copyOf(NAMES.values()), SETTLED);
  }

  /** What it reads and not every other node may, in order. */
  public Set<String> recent() {
    Set<String> recent = new TreeSet<>(reads);
    recent.removeAll(settled);
    return recent;
  }

  /** The type of an event, as it is written. */
  public static String of(Event event) {
    return of(event.getClass());
  }

  /** The same of events of a class. */
  public static String of(Class<? extends Event> events) {
    return NAMES.get(events);
  }
}
