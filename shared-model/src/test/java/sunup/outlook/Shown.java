package sunup.outlook;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.Morning;
import sunup.forecast.Forecast;
import sunup.forecast.Forecaster;
import sunup.outlook.Judged.RoomJudged;
import sunup.wire.Part;
import sunup.wire.Part.ChancePart;
import sunup.wire.Part.NeedPart;
import sunup.wire.Part.NotePart;
import sunup.wire.Part.RoomPart;
import sunup.wire.Part.SuitePart;
import sunup.wire.Part.WaitPart;

/** What the screens show of a suite at a moment. */
record Shown(Judged judged, List<Part> parts) {
  private static final int TRIALS = 64;

  /** With figures of that moment and nothing said before. */
  static Shown at(Suite suite, String clock) {
    return at(suite, clock, figures(suite.morning(), clock));
  }

  static Shown at(Suite suite, String clock, Foretold figures) {
    return after(Judged.NOTHING, suite, clock, figures);
  }

  static Shown after(Judged before, Suite suite, String clock, Foretold figures) {
    Morning morning = suite.morning();
    long now = Suite.at(clock);
    Judged judged = Outlook.judge(before, morning, figures, now);
    return new Shown(judged, Outlook.parts(morning, figures, judged, now));
  }

  static Foretold figures(Morning morning, String clock) {
    return new Foretold(forecast(morning, clock), morning.seq(), false);
  }

  static Forecast forecast(Morning morning, String clock) {
    return Forecaster.run(Outlook.input(morning, Suite.at(clock), TRIALS));
  }

  RoomJudged room(int room) {
    return judged.rooms().get("" + room);
  }

  NeedPart need(int room) {
    return (NeedPart) part("need/" + room);
  }

  RoomPart column(int room) {
    return (RoomPart) part("room/" + room);
  }

  ChancePart chance(int room) {
    return (ChancePart) part("chance/" + room);
  }

  WaitPart wait(int room) {
    return (WaitPart) part("wait/" + room);
  }

  SuitePart suite() {
    return (SuitePart) part("suite");
  }

  Map<String, NotePart> notes() {
    Map<String, NotePart> notes = new LinkedHashMap<>();
    for (Part part : parts) {
      if (part instanceof NotePart note) {
        notes.put(note.key(), note);
      }
    }
    return notes;
  }

  boolean has(String key) {
    return parts.stream().anyMatch(p -> p.key().equals(key));
  }

  Part part(String key) {
    return parts.stream().filter(p -> p.key().equals(key)).findFirst().orElseThrow();
  }
}
