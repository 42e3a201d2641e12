package sunup.simulated;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.live.Sight;
import sunup.outlook.Foretold;
import sunup.wire.Part;

/** Shows the last notes and how many there are: enough to tell one state from every other. */
final class NoteSight implements Sight {
  private static final int SHOWN = 3;

  @Override
  public Figuring figuring(Morning state, long now, int trialsMost) {
    return null;
  }

  @Override
  public Seen see(MorningId morning, Object before, Morning state, Foretold figures, long now) {
    return new Seen(null, parts(state));
  }

  static List<Part> parts(Morning state) {
    List<Morning.NoteKept> notes = state.notes();
    List<Part> parts = new ArrayList<>();
    parts.add(part("notes", 0, notes.size() + " notes, " + notes.hashCode()));
    for (int at = Math.max(0, notes.size() - SHOWN); at < notes.size(); at++) {
      Morning.NoteKept note = notes.get(at);
      parts.add(part("note/" + at, note.at(), note.text().text()));
    }
    return parts;
  }

  private static Part part(String key, long at, String text) {
    return new Part.NotePart(key, null, null, at, "note", text);
  }
}
