package sunup.outlook;

import java.util.stream.Collectors;
import sunup.board.Morning;
import sunup.board.Morning.PersonDay;
import sunup.board.Move;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;

/** Moves in words, as somebody would say them on the telephone. */
final class MoveWords {
  private final Snapshot snapshot;
  private final Morning morning;
  private final Words words;

  MoveWords(Snapshot snapshot) {
    this.snapshot = snapshot;
    morning = snapshot.morning();
    words = new Words(snapshot);
  }

  String say(Move move) {
    if (move instanceof Move.SendTo send) {
      return who(null, send.person()) + " to room " + send.room();
    }
    if (move instanceof Move.Unit unit) {
      return "next free " + unit.kind() + " to room " + unit.room() + " first";
    }
    if (move instanceof Move.First first) {
      return "room "
          + first.room()
          + ": first "
          + first.items().stream().map(i -> item(first.room(), i)).collect(Collectors.joining("; "))
          + "; the rest meanwhile";
    }
    if (move instanceof Move.OpenEarlier open) {
      return "ask " + open.place() + " to open " + words.clock(open.at());
    }
    if (move instanceof Move.Attend attend) {
      return "supervisor to room " + attend.room() + " first";
    }
    if (move instanceof Move.Later later) {
      return "agree " + words.clock(later.at()) + " for room " + later.room();
    }
    Move.Talk talk = (Move.Talk) move;
    return "talk about swapping " + talk.room() + " and " + talk.other();
  }

  private String item(RoomId room, String key) {
    RoomSheet sheet = snapshot.sheets().get(room);
    RoomSheet.Line line = sheet == null ? null : sheet.line(key);
    return line == null ? key : line.asks().desk();
  }

  /** A role, and for one person the room or the pseudonym; never a name. */
  String who(Role role, PersonId person) {
    PersonDay day = person == null ? null : morning.people().get(person);
    if (day == null) {
      return role == null ? "somebody" : role.word();
    }
    RoomId own = day.plan().room();
    return day.plan().role().word() + (own == null ? " " + person : " of " + own);
  }
}
