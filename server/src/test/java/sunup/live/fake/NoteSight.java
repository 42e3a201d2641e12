package sunup.live.fake;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntConsumer;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.Role;
import sunup.board.RoomUse;
import sunup.board.Step;
import sunup.forecast.Forecast;
import sunup.live.Sight;
import sunup.outlook.Foretold;
import sunup.wire.Part;
import sunup.wire.Standing;

/**
 * Shows each note three times: its length to the wall, its first letter to staff, its text to the
 * desk. The figures are the number of trials and the state's sequence number.
 */
public final class NoteSight implements Sight {
  private volatile boolean broken;
  private volatile boolean unforeseeable;
  private volatile boolean doubled;
  private volatile IntConsumer advanced = upTo -> {};

  /** From now on nothing can be drawn, or it can again. */
  public void broken(boolean now) {
    broken = now;
  }

  /** From now on no forecast can be computed, or it can again. */
  public void unforeseeable(boolean now) {
    unforeseeable = now;
  }

  /** From now on is told how many trials a forecast has come to. */
  public void advanced(IntConsumer told) {
    advanced = told;
  }

  /** From now on the desk's parts can't be told apart, or they can again. */
  public void doubled(boolean now) {
    doubled = now;
  }

  @Override
  public Figuring figuring(Morning state, long now, int trialsMost) {
    if (unforeseeable) {
      throw new IllegalStateException("planted by the test");
    }
    return new Figuring() {
      private int trials;

      @Override
      public Runnable sharing(int upTo) {
        return () -> {
          trials = upTo;
          advanced.accept(upTo);
        };
      }

      @Override
      public Forecast result() {
        return new Forecast(1, "", 1, trials, now, List.of(), List.of(), List.of());
      }
    };
  }

  @Override
  public Seen see(MorningId id, Object before, Morning state, Foretold figures, long now) {
    if (broken) {
      throw new IllegalStateException("planted by the test");
    }
    List<Part> parts = new ArrayList<>();
    int trials = figures.forecast() == null ? 0 : figures.forecast().trials();
    Long old = figures.old() && figures.forecast() != null ? figures.forecast().now() : null;
    parts.add(suite(id, state.notes().size(), old));
    for (int i = 0; i < state.notes().size(); i++) {
      Morning.NoteKept note = state.notes().get(i);
      String text = note.text().shown();
      parts.add(room(i, text.length()));
      parts.add(new Part.PlacePart("place/" + i, "p" + i, text.substring(0, 1), note.at(), 1));
      parts.add(new Part.NotePart("note/" + i, null, Role.DESK, note.at(), "note", text));
    }
    parts.add(new Part.NotePart("trials", null, Role.DESK, 0, "trials", "" + trials));
    if (doubled) {
      parts.add(parts.get(parts.size() - 1));
    }
    return new Seen(state.seq(), parts);
  }

  private static Part suite(MorningId id, int cases, Long figuresOf) {
    String suite = id.suite().value();
    String date = id.date().toString();
    return new Part.SuitePart(
        "suite",
        "Test",
        suite,
        date,
        "UTC",
        "open",
        Step.WHEELS_IN,
        0,
        null,
        cases,
        0,
        0,
        figuresOf,
        false,
        null);
  }

  private static Part room(int order, int late) {
    return new Part.RoomPart(
        "room/" + order,
        "R" + order,
        order,
        null,
        false,
        Standing.AHEAD,
        null,
        null,
        null,
        null,
        late,
        false,
        "ahead",
        null,
        null,
        null,
        null,
        null,
        0,
        RoomUse.FREE,
        null,
        0);
  }
}
