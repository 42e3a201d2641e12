package sunup.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import sunup.board.Morning.Help;
import sunup.board.Morning.MoveDay;
import sunup.board.Morning.MoveState;
import sunup.board.Morning.PersonDay;
import sunup.board.Morning.RoomDay;

/**
 * Something that is asked of people and that nobody has answered yet: what a person's own page puts
 * under "asked of you" (package {@code pocket} of the pages has the same rule).
 *
 * @param key tells one ask from another; asked again it is another one
 * @param askedAt the morning's time
 * @param of those whom it is asked of, who have not left
 */
public record OpenAsk(String key, long askedAt, Set<PersonId> of) {
  public OpenAsk {
    of = Set.copyOf(of);
  }

  /** All that is open in a morning. */
  public static List<OpenAsk> in(Morning morning) {
    List<OpenAsk> open = new ArrayList<>();
    for (Map.Entry<String, MoveDay> each : morning.moves().entrySet()) {
      MoveDay move = each.getValue();
      if (move.state() == MoveState.ASKED) {
        Set<PersonId> of =
            people(
                morning,
                p ->
                    move.person() == null
                        ? p.plan().role() == move.role()
                        : p.plan().id().equals(move.person()));
        open.add(new OpenAsk("move/" + each.getKey() + "/" + move.askedAt(), move.askedAt(), of));
      }
    }
    for (RoomDay room : morning.rooms().values()) {
      Help help = room.help();
      if (help != null && help.answeredBy() == null) {
        Set<PersonId> of = people(morning, p -> canGo(p, room.id()));
        open.add(new OpenAsk("help/" + room.id() + "/" + help.at(), help.at(), of));
      }
    }
    return open;
  }

  private static Set<PersonId> people(Morning morning, Predicate<PersonDay> which) {
    return morning.people().values().stream()
        .filter(p -> p.leftAt() == null)
        .filter(which)
        .map(p -> p.plan().id())
        .collect(Collectors.toSet());
  }

  /** Whoever has no room and covers none roams; others go to rooms that they cover or are in. */
  private static boolean canGo(PersonDay p, RoomId room) {
    PersonPlan plan = p.plan();
    boolean roams = plan.room() == null && plan.covers().isEmpty();
    return roams
        || (!room.equals(plan.room()) && (plan.covers().contains(room) || room.equals(p.room())));
  }
}
