package sunup.simulated;

import java.util.ArrayList;
import java.util.List;
import sunup.board.Command;
import sunup.board.Event;
import sunup.board.Morning;
import sunup.board.Order;
import sunup.board.Outcome;
import sunup.board.Recorded;
import sunup.board.RefusalCode;
import sunup.suites.Decider;

/**
 * A small state machine that shows what the journal and the actor do with every kind of outcome: a
 * note is one event, a note on a room two, an empty note none; an undo is refused with words that
 * depend on the state.
 */
public final class NoteTaking implements Decider {
  @Override
  public Outcome decide(Morning state, Order order) {
    if (order.command() instanceof Command.AddNote note) {
      List<Recorded> events = new ArrayList<>();
      if (note.text() != null) {
        events.add(recorded(order, new Event.Noted(note.room(), note.text())));
        if (note.room() != null) {
          events.add(recorded(order, new Event.Noted(note.room(), note.text())));
        }
      }
      return new Outcome.Accepted(events);
    }
    if (order.command() instanceof Command.OpenMorning) {
      return new Outcome.Accepted(List.of(recorded(order, new Event.MorningOpened())));
    }
    if (order.command() instanceof Command.CloseMorning) {
      return new Outcome.Accepted(List.of(recorded(order, new Event.MorningClosed())));
    }
    if (order.command() instanceof Command.AgreeLater) {
      throw new IllegalStateException("a mistake in the board");
    }
    return new Outcome.Refused(
        RefusalCode.NOTHING_TO_UNDO, "there are " + state.notes().size() + " notes");
  }

  private static Recorded recorded(Order order, Event event) {
    return new Recorded(event, order.actor(), order.id(), order.happenedAt(), order.now());
  }

  @Override
  public Morning apply(Morning m, long seq, Recorded r) {
    List<Morning.NoteKept> notes = new ArrayList<>(m.notes());
    Long opened = m.openedAt();
    Long closed = m.closedAt();
    Morning.Phase phase = m.phase();
    if (r.event() instanceof Event.Noted noted) {
      notes.add(new Morning.NoteKept(noted.room(), r.actor().role(), r.happenedAt(), noted.text()));
    } else if (r.event() instanceof Event.MorningOpened) {
      opened = r.happenedAt();
      phase = Morning.Phase.OPEN;
    } else if (r.event() instanceof Event.MorningClosed) {
      closed = r.happenedAt();
      phase = Morning.Phase.CLOSED;
    }
    return new Morning(
        m.id(),
        phase,
        seq,
        m.settings(),
        m.beginsAt(),
        opened,
        closed,
        r.recordedAt(),
        m.rooms(),
        m.cases(),
        m.people(),
        m.units(),
        m.places(),
        m.sheets(),
        m.roomItems(),
        m.caseItems(),
        List.copyOf(notes),
        m.moves(),
        java.util.Map.of(),
        java.util.Map.of(),
        null,
        java.util.Map.of());
  }
}
