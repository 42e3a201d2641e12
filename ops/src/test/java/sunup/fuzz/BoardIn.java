package sunup.fuzz;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.board.Actor;
import sunup.board.Board;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.PersonId;
import sunup.board.Recorded;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.drugs.Gs1;
import sunup.drugs.Gs1Package;
import sunup.journal.Bytes;
import sunup.journal.EventCodec;
import sunup.journal.PrivateValue;
import sunup.journal.UnreadableEvent;

/** What the board and its journal read. */
final class BoardIn {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final EventCodec CODEC = new EventCodec(byte[]::new);
  private static final List<Role> ROLES = List.of(Role.values());
  private static final List<Morning> MORNINGS = mornings();

  private BoardIn() {}

  static List<Decoder> all() {
    return List.of(
        new Decoder("command", commands(), BoardIn::command),
        new Decoder("journal-event", events(), BoardIn::event),
        Decoder.ofText(
            "gs1",
            List.of(
                "]d2010952100000001810lot7\u001D17271231\u001D21s9",
                "0109521000000018\u001D7003271231230010A\u001D3103000123\u001D9912",
                "]C1^00095210000000000012\u001D41095210000000001\r\n"),
            BoardIn::scan));
  }

  private static List<String> journals() {
    return Project.texts("shared-model/src/test/resources/golden", ".journal");
  }

  /** The mornings of the old journals as they were a while before their ends. */
  private static List<Morning> mornings() {
    List<Morning> all = new ArrayList<>();
    try {
      for (String journal : journals()) {
        Morning morning = Morning.NONE;
        List<String> lines = journal.lines().toList();
        for (String line : lines.subList(0, lines.size() * 2 / 3)) {
          morning = Board.apply(morning, morning.seq() + 1, Json.read(line, Recorded.class));
        }
        all.add(morning);
      }
    } catch (BadJson e) {
      throw new IllegalStateException(e);
    }
    return all;
  }

  /** First letter which morning, second whose, then the command. */
  private static List<byte[]> commands() {
    List<byte[]> seeds = new ArrayList<>();
    for (byte[] command : Sample.of(Command.class)) {
      seeds.add(
          ("aa" + new String(command, StandardCharsets.UTF_8)).getBytes(StandardCharsets.UTF_8));
    }
    // Of a desk, in each morning; the letters are those that the numbers come out of.
    for (int i = 0; i < MORNINGS.size(); i++) {
      String whose = (char) ('`' + i) + "e";
      RoomId room = MORNINGS.get(i).rooms().keySet().iterator().next();
      for (String command :
          List.of(
              "{\"type\":\"add-note\",\"text\":\"as told\"}",
              "{\"type\":\"report-ready\",\"room\":\"" + room + "\"}",
              "{\"type\":\"say-room\",\"room\":\"" + room + "\",\"use\":\"cleaning\"}")) {
        seeds.add((whose + command).getBytes(StandardCharsets.UTF_8));
      }
    }
    return seeds;
  }

  /** Refused or carried out, and what it yields is kept and read again. */
  private static boolean command(byte[] bytes) {
    if (bytes.length < 2) {
      return false;
    }
    Command command;
    try {
      command = Json.read(Arrays.copyOfRange(bytes, 2, bytes.length), Command.class);
    } catch (BadJson refused) {
      return false;
    }
    Morning morning = MORNINGS.get(Math.floorMod(bytes[0], MORNINGS.size()));
    Role role = ROLES.get(Math.floorMod(bytes[1], ROLES.size()));
    PersonId person =
        morning.people().keySet().stream()
            .skip(Math.floorMod(bytes[1], 4))
            .findFirst()
            .orElse(null);
    long now = morning.lastRecordedAt() + 1_000;
    Order order =
        new Order(new CommandId("c1"), command, new Actor(role, person, "desk-1"), null, now, now);
    Outcome outcome = Board.decide(morning, order);
    if (!(outcome instanceof Outcome.Accepted accepted)) {
      return false;
    }
    Morning next = morning;
    for (Recorded recorded : accepted.events()) {
      next = Board.apply(next, next.seq() + 1, recorded);
      read(CODEC.encode(recorded, now), recorded);
    }
    return true;
  }

  private static void read(EventCodec.Encoded encoded, Recorded recorded) {
    Map<String, PrivateValue> privates = new HashMap<>();
    encoded.privates().forEach(value -> privates.put(value.ref(), value));
    try {
      Recorded again = CODEC.decode(encoded.bytes(), privates);
      // One random source of zeros: several private values of one event share a name.
      Must.be(encoded.privates().size() > 1 || again.equals(recorded), "kept as another");
    } catch (UnreadableEvent e) {
      Must.be(encoded.privates().size() > 1, "what was kept can't be read: " + e.getMessage());
    }
  }

  private static List<byte[]> events() {
    List<byte[]> seeds = new ArrayList<>();
    try {
      for (String journal : journals()) {
        for (String line : journal.lines().toList()) {
          if (seeds.size() < 120) {
            seeds.add(CODEC.encode(Json.read(line, Recorded.class), 0).bytes().raw());
          }
        }
      }
    } catch (BadJson e) {
      throw new IllegalStateException(e);
    }
    return seeds;
  }

  private static boolean event(byte[] bytes) {
    Recorded read;
    try {
      read = CODEC.decode(Bytes.of(bytes), Map.of());
    } catch (UnreadableEvent refused) {
      Must.be(refused.getMessage() != null, "refused without a word");
      return false;
    }
    EventCodec.Encoded encoded = CODEC.encode(read, 0);
    try {
      Must.same(read, CODEC.decode(encoded.bytes(), Map.of()));
    } catch (UnreadableEvent e) {
      throw new AssertionError("what was written can't be read: " + read, e);
    }
    return true;
  }

  /** What was read is read again of its own elements. */
  static boolean scan(String text) {
    if (!(Gs1.read(text, DAY) instanceof Gs1.Read read)) {
      return false;
    }
    Gs1Package contents = read.contents();
    contents.expiry();
    StringBuilder again = new StringBuilder();
    for (Gs1Package.Element element : contents.elements()) {
      again.append(element.id()).append(element.data()).append('\u001D');
    }
    if (again.length() <= Gs1.LENGTH_MAX) {
      Must.same(read, Gs1.read(again.toString(), DAY));
    }
    return true;
  }
}
