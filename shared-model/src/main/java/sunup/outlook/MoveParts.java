package sunup.outlook;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sunup.board.Morning;
import sunup.board.Morning.MoveDay;
import sunup.board.Morning.MoveState;
import sunup.board.Move;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.forecast.ForecastInput;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.moves.Applied;
import sunup.moves.Idea;
import sunup.moves.Ideas;
import sunup.wire.Part;
import sunup.wire.Part.IdeaPart;
import sunup.wire.Part.IdeasPart;
import sunup.wire.Part.MovePart;
import sunup.wire.RoomGain;

/** Moves as the screens show them, and as the forecast reckons with them. */
final class MoveParts {
  /** A move that was done, or that somebody could not do, is not thought of again for so long. */
  private static final long REST = 20 * FirstSettings.MINUTE;

  private final Snapshot snapshot;
  private final Morning morning;
  private final MoveWords words;

  MoveParts(Snapshot snapshot) {
    this.snapshot = snapshot;
    morning = snapshot.morning();
    words = new MoveWords(snapshot);
  }

  /** The input with the moves that were accepted. What the board says by itself changes nothing. */
  static ForecastInput withAccepted(Morning morning, ForecastInput in, List<PersonIn> free) {
    ForecastInput with = in;
    for (MoveDay day : morning.moves().values()) {
      if (day.state() == MoveState.ACCEPTED) {
        with = Applied.to(with, free, day.move(), day.answeredAt());
      }
    }
    return with;
  }

  /** Keys of moves that are not to be thought of now. */
  static Set<String> off(Morning morning, long now) {
    Set<String> off = new HashSet<>();
    for (MoveDay day : morning.moves().values()) {
      boolean rests =
          switch (day.state()) {
            case ASKED, ACCEPTED, NOT_SAFE -> true;
            case DONE, DECLINED -> now < day.answeredAt() + REST;
            case WITHDRAWN -> false;
          };
      if (rests) {
        off.add(day.move().key());
      }
    }
    return off;
  }

  /** What was asked, for everybody who works; what is over stays for a while. */
  void addAsked(List<Part> parts) {
    for (MoveDay day : morning.moves().values()) {
      boolean over = day.state() != MoveState.ASKED && day.state() != MoveState.ACCEPTED;
      boolean gone =
          day.state() == MoveState.WITHDRAWN
              || (over
                  && day.state() != MoveState.NOT_SAFE
                  && snapshot.now() >= day.answeredAt() + REST);
      if (!gone) {
        parts.add(asked(day));
      }
    }
  }

  private MovePart asked(MoveDay day) {
    RoomId room = day.move().room();
    return new MovePart(
        "move/" + day.move().key(),
        day.move().key(),
        day.move(),
        words.say(day.move()),
        room == null ? null : room.value(),
        day.role(),
        day.person() == null ? null : day.person().value(),
        words.who(day.role(), day.person()),
        day.state(),
        day.askedBy(),
        day.askedAt(),
        day.answeredBy(),
        day.answeredAt(),
        day.revision());
  }

  /** What may help, for the desk. Nothing that was asked or answered since the search. */
  void addIdeas(List<Part> parts, Ideas ideas) {
    if (ideas.now() == 0 || morning.phase() != Morning.Phase.OPEN) {
      return;
    }
    Set<String> off = off(morning, snapshot.now());
    int rank = 0;
    for (Idea idea : ideas.shown()) {
      if (!off.contains(idea.move().key()) && isOpen(idea.move().room())) {
        parts.add(
            idea(
                rank++,
                idea.move(),
                idea.role(),
                idea.person(),
                round(idea.savedMinutes()),
                round(idea.errorMinutes()),
                gains(idea)));
      }
    }
    for (Move.Talk talk : ideas.talk()) {
      if (!off.contains(talk.key()) && isOpen(talk.room())) {
        parts.add(idea(rank++, talk, Role.SUPERVISOR, null, null, null, List.of()));
      }
    }
    parts.add(
        new IdeasPart(
            "ideas",
            ideas.now(),
            ideas.possible(),
            ideas.screened(),
            ideas.confirmed(),
            ideas.trials()));
  }

  /** A room that has started, or lost its case, since the search needs no move. */
  private boolean isOpen(RoomId room) {
    RoomSheet sheet = room == null ? null : snapshot.sheets().get(room);
    return room == null || (sheet != null && sheet.startedAt() == null);
  }

  private IdeaPart idea(
      int rank,
      Move move,
      Role role,
      PersonId person,
      Double saved,
      Double error,
      List<RoomGain> gains) {
    return new IdeaPart(
        "idea/" + move.key(),
        rank,
        move,
        words.say(move),
        move.room() == null ? null : move.room().value(),
        role,
        person == null ? null : person.value(),
        words.who(role, person),
        saved,
        error,
        gains);
  }

  private static List<RoomGain> gains(Idea idea) {
    List<RoomGain> gains = new ArrayList<>();
    idea.rooms().forEach(g -> gains.add(new RoomGain(g.room(), round(g.minutes()))));
    return gains;
  }

  private static double round(double minutes) {
    return Math.round(minutes * 10) / 10.0;
  }
}
