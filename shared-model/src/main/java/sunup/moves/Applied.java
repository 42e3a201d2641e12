package sunup.moves;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Move;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;

/**
 * What a move changes in the forecast's input: the same for one that is thought of and one that was
 * accepted. Nothing else of the input changes, least of all what is to be done and how long it
 * takes.
 */
public final class Applied {
  private Applied() {}

  /**
   * The input with the move. What it names and the input does not have changes nothing.
   *
   * @param free people without a room to serve who are here and not in the input; one who is sent
   *     serves the room that it is for and no other
   * @param since from when it counts: when it was accepted, or now
   */
  public static ForecastInput to(ForecastInput in, List<PersonIn> free, Move move, long since) {
    if (move instanceof Move.SendTo send) {
      return sent(withFree(in, free, send), send, since);
    }
    if (move instanceof Move.Unit unit) {
      return promised(in, unit);
    }
    if (move instanceof Move.First first) {
      return Copies.items(
          in,
          first.room().value(),
          i -> Suite.isOpen(i) && first.items().contains(i.key()) ? Copies.asked(i) : i);
    }
    if (move instanceof Move.OpenEarlier open) {
      return Copies.places(in, p -> opened(in, p, open));
    }
    if (move instanceof Move.Attend attend) {
      return Copies.items(in, attend.room().value(), i -> isSupervised(i) ? Copies.asked(i) : i);
    }
    if (move instanceof Move.Later later) {
      return Copies.room(in, later.room().value(), r -> later(r, later));
    }
    return in;
  }

  /** The input with one more unit of a kind: nobody can be asked for it, it can only be tried. */
  public static ForecastInput oneMore(ForecastInput in, String kind) {
    return Copies.kinds(
        in, k -> k.id().equals(kind) ? new KindIn(k.id(), k.capacity() + 1, k.promised()) : k);
  }

  private static ForecastInput withFree(ForecastInput in, List<PersonIn> free, Move.SendTo send) {
    String id = send.person().value();
    if (Suite.person(in, id) != null || Suite.room(in, send.room().value()) == null) {
      return in;
    }
    for (PersonIn person : free) {
      if (person.id().equals(id)) {
        return Copies.joined(in, person, send.room().value());
      }
    }
    return in;
  }

  private static ForecastInput sent(ForecastInput in, Move.SendTo send, long since) {
    String room = send.room().value();
    PersonIn person = Suite.person(in, send.person().value());
    if (person == null || Suite.room(in, room) == null) {
      return in;
    }
    ForecastInput copy = in;
    if (!Suite.serves(person, room)) {
      copy = Copies.people(in, p -> p.id().equals(person.id()) ? there(p, room, since) : p);
    }
    if (person.room() != null) {
      return copy;
    }
    String fault = Suite.isBusy(in, person) ? null : fault(Suite.room(in, room), person);
    return Copies.items(
        copy,
        room,
        i -> {
          if (i.key().equals(fault)) {
            return Copies.taken(i, Math.min(since, in.now()), person.id());
          }
          return Suite.canDo(person, i) ? Copies.asked(i) : i;
        });
  }

  private static PersonIn there(PersonIn p, String room, long since) {
    return p.room() != null ? Copies.moved(p, room, since) : Copies.covering(p, room);
  }

  private static String fault(RoomIn room, PersonIn person) {
    for (ItemIn item : room.items()) {
      if (Suite.canMend(person, item)) {
        return item.key();
      }
    }
    return null;
  }

  /** Promises that were given stand before it. */
  private static ForecastInput promised(ForecastInput in, Move.Unit unit) {
    String room = unit.room().value();
    if (Suite.room(in, room) == null) {
      return in;
    }
    return Copies.kinds(
        in,
        k -> {
          if (!k.id().equals(unit.kind()) || k.promised().contains(room)) {
            return k;
          }
          List<String> promised = new ArrayList<>(k.promised());
          promised.add(room);
          return new KindIn(k.id(), k.capacity(), promised);
        });
  }

  private static PlaceIn opened(ForecastInput in, PlaceIn p, Move.OpenEarlier open) {
    boolean earlier = p.id().equals(open.place().value()) && open.at() < p.opensAt();
    return earlier ? new PlaceIn(p.id(), Math.max(open.at(), in.now()), p.walk()) : p;
  }

  private static RoomIn later(RoomIn r, Move.Later later) {
    return later.at() > r.target() && !Suite.isUnderWay(r)
        ? Copies.later(r, later.at() - r.target())
        : r;
  }

  static boolean isSupervised(ItemIn item) {
    return Suite.isOpen(item)
        && item.who().stream().anyMatch(any -> any.size() == 1 && any.contains("supervisor"));
  }
}
