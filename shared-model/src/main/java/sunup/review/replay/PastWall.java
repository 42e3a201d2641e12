package sunup.review.replay;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import sunup.board.Board;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.Recorded;
import sunup.board.RoomId;
import sunup.codec.Maybe;
import sunup.forecast.Forecast;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.outlook.Foretold;
import sunup.outlook.Judged;
import sunup.outlook.Outlook;
import sunup.review.facts.ForecastNote;
import sunup.wire.Part;
import sunup.wire.Part.NeedPart;
import sunup.wire.Part.RoomPart;
import sunup.wire.Part.SuitePart;

/**
 * A closed morning minute by minute, as the wall has it: what was recorded by each minute, and of
 * each room the last figures that the log of forecasts has by then. Between two moments of the log
 * a room keeps the figures of the first; what happens to it shows at once.
 *
 * @param from the first frame's minute, epoch milliseconds
 * @param to the last one's
 * @param kept moments of rooms that the board kept when it said them
 * @param recomputed moments that nobody kept: by today's model
 * @param frames one for each minute in which something changed
 */
public record PastWall(
    LocalDate date, String zone, long from, long to, int kept, int recomputed, List<Frame> frames) {
  private static final long MINUTE = 60_000;

  /** It begins so long before the first target, or when the morning was opened. */
  private static final long BEFORE = 120 * MINUTE;

  /** It ends so long after the last start, if the morning was not closed by then. */
  private static final long AFTER = 10 * MINUTE;

  /** No morning has more minutes to be played. */
  private static final int FRAMES_MOST = 600;

  public PastWall {
    frames = List.copyOf(frames);
  }

  /**
   * What changed at one minute; the rest stands.
   *
   * @param suite null if it is as before
   * @param rooms those that changed
   * @param needs all of them; null if they are as before
   */
  public record Frame(
      long at, @Maybe SuitePart suite, List<RoomPart> rooms, @Maybe List<NeedPart> needs) {
    public Frame {
      rooms = List.copyOf(rooms);
    }
  }

  /**
   * Plays a closed morning.
   *
   * @param journal all events in order of their sequence
   * @param notes what the board said, kept or made again
   */
  public static PastWall of(List<Recorded> journal, List<ForecastNote> notes) {
    Morning end = Morning.NONE;
    long opened = Long.MIN_VALUE;
    for (Recorded recorded : journal) {
      end = Board.apply(end, end.seq() + 1, recorded);
      if (end.phase() == Morning.Phase.OPEN && opened == Long.MIN_VALUE) {
        opened = recorded.recordedAt();
      }
    }
    if (end.phase() != Morning.Phase.CLOSED) {
      throw new IllegalArgumentException("only a closed morning is played: " + end.id());
    }
    long first = Long.MAX_VALUE;
    long last = Long.MIN_VALUE;
    for (CaseDay day : end.cases().values()) {
      Long start = day.startedAt(end.settings().startEvent());
      first = Math.min(first, day.target());
      last = Math.max(last, start == null ? day.target() : start);
    }
    if (last == Long.MIN_VALUE) {
      first = opened;
      last = opened;
    }
    // The next whole minute: by then it is open.
    long from = minute(Math.max(opened, first - BEFORE)) + MINUTE;
    long to = Math.max(from, minute(last)) + AFTER;
    to = Math.min(to, from + FRAMES_MOST * MINUTE);
    int recomputed =
        (int) notes.stream().filter(n -> n.origin() == ForecastNote.Origin.RECOMPUTED).count();
    return new PastWall(
        end.id().date(),
        end.settings().zone(),
        from,
        to,
        notes.size() - recomputed,
        recomputed,
        new Player(journal, notes).play(from, to));
  }

  private static long minute(long at) {
    return Math.floorDiv(at, MINUTE) * MINUTE;
  }

  /** Goes from minute to minute. */
  private static final class Player {
    private final List<Recorded> journal;
    private final List<ForecastNote> notes;
    private Morning state = Morning.NONE;
    private Judged judged = Judged.NOTHING;
    private SuitePart suite;
    private final Map<String, RoomPart> rooms = new HashMap<>();
    private List<NeedPart> needs;

    Player(List<Recorded> journal, List<ForecastNote> notes) {
      this.journal = journal;
      this.notes = notes;
    }

    List<Frame> play(long from, long to) {
      List<Frame> frames = new ArrayList<>();
      int next = 0;
      boolean closing = false;
      for (long at = from; at <= to && !closing; at += MINUTE) {
        while (next < journal.size() && journal.get(next).recordedAt() <= at) {
          Morning after = Board.apply(state, state.seq() + 1, journal.get(next));
          // As it stood before it was closed: who looks back looks at the starts.
          closing = after.phase() == Morning.Phase.CLOSED;
          if (closing) {
            break;
          }
          state = after;
          next++;
        }
        Frame frame = frame(at);
        if (frame.suite() != null || !frame.rooms().isEmpty() || frame.needs() != null) {
          frames.add(frame);
        }
      }
      return frames;
    }

    private Frame frame(long at) {
      Map<RoomId, ForecastNote> said = said(at);
      Foretold figures = figures(said, at);
      judged = Outlook.judge(judged, state, figures, at);
      SuitePart newSuite = null;
      List<RoomPart> changed = new ArrayList<>();
      List<NeedPart> asks = new ArrayList<>();
      for (Part part : Outlook.parts(state, figures, judged, at)) {
        if (part instanceof SuitePart s && !s.equals(suite)) {
          newSuite = s;
          suite = s;
        } else if (part instanceof RoomPart r && !r.equals(rooms.put(r.room(), r))) {
          changed.add(r);
        } else if (part instanceof NeedPart n) {
          asks.add(PastWords.timeless(n, state, said.get(new RoomId(n.room()))));
        }
      }
      boolean same = Objects.equals(asks, needs);
      needs = asks;
      return new Frame(at, newSuite, changed, same ? null : asks);
    }

    /** The last that was said of each room's case by then. */
    private Map<RoomId, ForecastNote> said(long at) {
      Map<RoomId, ForecastNote> said = new HashMap<>();
      for (ForecastNote note : notes) {
        CaseDay day = state.caseIn(note.room());
        if (note.at() <= at && day != null && day.plan().id().equals(note.caseId())) {
          said.merge(note.room(), note, (a, b) -> b.at() >= a.at() ? b : a);
        }
      }
      return said;
    }

    private Foretold figures(Map<RoomId, ForecastNote> said, long at) {
      if (said.isEmpty()) {
        return Foretold.NONE;
      }
      long newest = said.values().stream().mapToLong(ForecastNote::at).max().orElseThrow();
      ForecastNote any = said.values().iterator().next();
      List<RoomOut> outs =
          state.rooms().keySet().stream()
              .filter(said::containsKey)
              .map(r -> out(said.get(r)))
              .toList();
      Forecast kept =
          new Forecast(
              any.model(),
              any.inputs(),
              any.seed(),
              any.trials(),
              newest,
              outs,
              List.of(),
              List.of());
      return new Foretold(kept, state.seq(), at - newest >= MINUTE);
    }

    private static RoomOut out(ForecastNote n) {
      List<Share> shares =
          n.named().stream()
              .map(
                  h ->
                      new Share(
                          n.room().value(),
                          h.cause().kind(),
                          h.cause().item(),
                          h.cause().thing(),
                          h.cause().where(),
                          h.share(),
                          n.start50()))
              .toList();
      return new RoomOut(
          n.room().value(),
          n.onTime(),
          n.start10(),
          n.start50(),
          n.start90(),
          n.start10(),
          n.start50(),
          n.start90(),
          0,
          0,
          n.trials(),
          n.trials(),
          shares,
          0,
          List.of());
    }
  }
}
