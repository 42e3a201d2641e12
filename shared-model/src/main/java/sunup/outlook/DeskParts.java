package sunup.outlook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.NoteKept;
import sunup.board.Morning.RoomDay;
import sunup.board.Private;
import sunup.board.Role;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.wire.HoldupShare;
import sunup.wire.Part;
import sunup.wire.Part.ChancePart;
import sunup.wire.Part.NotePart;

/** The figures and the notes, for the desk. */
final class DeskParts {
  private static final int NOTES_AT_MOST = 50;
  private static final int SHARES_AT_MOST = 6;

  private final Snapshot snapshot;
  private final Morning morning;
  private final Forecast forecast;
  private final Judged judged;

  DeskParts(Snapshot snapshot, Foretold figures, Judged judged) {
    this.snapshot = snapshot;
    this.morning = snapshot.morning();
    this.forecast = figures.forecast();
    this.judged = judged;
  }

  void addTo(List<Part> parts) {
    parts.addAll(chances());
    for (RoomDay room : morning.rooms().values()) {
      said(parts, room);
    }
    notes(parts, morning.notes());
    for (CaseDay c : morning.cases().values()) {
      if (c.reason() != null && c.reason().said() != null) {
        parts.add(
            note(
                "note/reason/" + c.plan().id(),
                c.plan().room(),
                c.reason().by(),
                c.reason().at(),
                "reason",
                c.reason().said()));
      }
    }
  }

  List<ChancePart> chances() {
    List<ChancePart> chances = new ArrayList<>();
    for (RoomOut room : forecast == null ? List.<RoomOut>of() : forecast.rooms()) {
      RoomSheet sheet = snapshot.sheet(room.id());
      // Figures may be older than a case that was taken off since.
      if (sheet != null) {
        chances.add(chance(sheet, room));
      }
    }
    return chances;
  }

  /**
   * The newest notes, each under its time: its place in the list moves when older ones are dropped,
   * and all of them would be sent again with each new one.
   */
  private static void notes(List<Part> parts, List<NoteKept> notes) {
    Map<Long, Integer> ofTime = new HashMap<>();
    for (int i = 0; i < notes.size(); i++) {
      NoteKept note = notes.get(i);
      int sameTime = ofTime.merge(note.at(), 1, Integer::sum) - 1;
      if (i < notes.size() - NOTES_AT_MOST) {
        continue;
      }
      String key = "note/" + note.at() + "-" + sameTime;
      parts.add(note(key, note.room(), note.by(), note.at(), "note", note.text()));
    }
  }

  private ChancePart chance(RoomSheet sheet, RoomOut room) {
    StartTold told = StartTold.of(sheet, room, judged.of(room.id()).standing(), snapshot.now());
    if (!told.known()) {
      return unknown(room);
    }
    Words words = new Words(snapshot);
    List<HoldupShare> shares = new ArrayList<>();
    for (Share share : room.holdups()) {
      if (shares.size() == SHARES_AT_MOST) {
        break;
      }
      shares.add(new HoldupShare(words.key(share), words.staff(share), round(share.share(), 100)));
    }
    return new ChancePart(
        "chance/" + room.id(),
        room.id(),
        round(room.onTime(), 100),
        told.at10(),
        told.at50(),
        told.at90(),
        told.moreThanHours(),
        round(room.meanLateMs() / 60_000, 10),
        room.capped(),
        forecast.trials(),
        room.kept(),
        room.tried(),
        round(room.alreadyLost(), 100),
        shares);
  }

  private ChancePart unknown(RoomOut room) {
    return new ChancePart(
        "chance/" + room.id(),
        room.id(),
        null,
        null,
        null,
        null,
        null,
        null,
        0,
        forecast.trials(),
        room.kept(),
        room.tried(),
        0,
        List.of());
  }

  private static double round(double value, int parts) {
    return Math.round(value * parts) / (double) parts;
  }

  private static void said(List<Part> parts, RoomDay room) {
    if (room.taken() != null && room.taken().said() != null) {
      parts.add(
          note(
              "note/taken/" + room.id(),
              room.id(),
              room.taken().by(),
              room.taken().at(),
              "taken",
              room.taken().said()));
    }
    if (room.help() != null && room.help().answeredBy() == null) {
      Private what =
          room.help().what() == null ? Private.of("send someone, not urgent") : room.help().what();
      parts.add(
          note(
              "note/help/" + room.id(),
              room.id(),
              room.help().by(),
              room.help().at(),
              "help",
              what));
    }
  }

  private static NotePart note(
      String key, sunup.board.RoomId room, Role by, long at, String kind, Private text) {
    return new NotePart(key, room == null ? null : room.value(), by, at, kind, text.shown());
  }
}
