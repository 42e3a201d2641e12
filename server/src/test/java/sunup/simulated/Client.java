package sunup.simulated;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import sunup.board.Actor;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.Private;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.suites.Reply;
import sunup.suites.Submission;

/** Somebody at a screen who sends one command until it is answered, and keeps what was said. */
final class Client {
  private static final long AGAIN_MS = 700;

  final Submission submission;
  final String text;
  final int events;
  final List<Reply> answers = new ArrayList<>();
  final List<Reply> answersToOther = new ArrayList<>();
  private final SimulatedTime.Loop loop;
  private final BiConsumer<Submission, Consumer<Reply>> network;

  /**
   * @param kind 0 to 9: mostly a note of one event, else of two, of none, or a refusal
   * @param network carries a command somewhere; the answer comes never, once or several times
   */
  Client(
      int number,
      int kind,
      long touchedAt,
      SimulatedTime.Loop loop,
      BiConsumer<Submission, Consumer<Reply>> network) {
    this.text = "note " + number;
    this.loop = loop;
    this.network = network;
    Command command;
    if (kind == 0) {
      command = new Command.AddNote(null, null);
      events = 0;
    } else if (kind <= 2) {
      command = new Command.Undo(new CommandId("c0"));
      events = 0;
    } else if (kind <= 4) {
      command = new Command.AddNote(new RoomId("3"), Private.of(text));
      events = 2;
    } else {
      command = new Command.AddNote(null, Private.of(text));
      events = 1;
    }
    Actor actor = new Actor(Role.DESK, null, "desk-1");
    this.submission =
        new Submission(new CommandId("c" + number), command, actor, null, touchedAt, 0);
  }

  boolean settled() {
    return !answers.isEmpty();
  }

  /** Sends, and again until it is answered with more than "not now". */
  void send() {
    if (settled()) {
      return;
    }
    network.accept(submission, this::answered);
    Runnable unused = loop.after(AGAIN_MS, this::send);
  }

  /** Sends once more what is answered. */
  void sendAgain() {
    network.accept(submission, this::answered);
  }

  /** Sends something else under the same id. */
  void sendOther() {
    Submission other =
        new Submission(
            submission.id(),
            new Command.AddNote(null, Private.of("something else")),
            submission.actor(),
            null,
            submission.touchedAt(),
            0);
    network.accept(
        other,
        reply -> {
          if (!(reply instanceof Reply.Later)) {
            answersToOther.add(reply);
          }
        });
  }

  private void answered(Reply reply) {
    if (!(reply instanceof Reply.Later)) {
      answers.add(reply);
    }
  }
}
