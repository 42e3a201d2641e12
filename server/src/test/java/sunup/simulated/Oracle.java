package sunup.simulated;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.CommandId;
import sunup.board.Event;
import sunup.board.Morning;
import sunup.board.Recorded;
import sunup.board.RefusalCode;
import sunup.journal.Bytes;
import sunup.journal.EventCodec;
import sunup.journal.JournalCheck;
import sunup.journal.Receipt;
import sunup.journal.Stored;
import sunup.journal.UnreadableEvent;
import sunup.suites.Reply;
import sunup.suites.Standpoint;

/** Says what was wrong with a history: from what the clients were told and what the disk holds. */
final class Oracle {
  private final EventCodec codec =
      new EventCodec(
          count -> {
            throw new IllegalStateException("an oracle writes nothing");
          });
  private final NoteTaking board = new NoteTaking();
  private final List<Morning> replayed = new ArrayList<>(List.of(Morning.NONE));
  private final List<Recorded> events = new ArrayList<>();
  private final Set<String> problems = new LinkedHashSet<>();

  List<String> problems() {
    return List.copyOf(problems);
  }

  void problem(String what) {
    problems.add(what);
  }

  /** The morning after so many events, as the journal has it. */
  Morning at(int seq, Stored stored) {
    replay(stored);
    return seq < replayed.size() ? replayed.get(seq) : Morning.NONE;
  }

  /** What an owner tells must be durable, and what the events so far make of a morning. */
  void told(String node, Standpoint standpoint, Stored stored) {
    long seq = standpoint.state().seq();
    replay(stored);
    if (seq >= replayed.size()) {
      problems.add(node + " told event " + seq + ", the disk has " + (replayed.size() - 1));
    } else if (!replayed.get((int) seq).equals(standpoint.state())) {
      problems.add(node + " told a state at event " + seq + " that the journal does not make");
    }
  }

  private void replay(Stored stored) {
    for (int at = events.size(); at < stored.events().size(); at++) {
      Bytes bytes = stored.events().get(at).bytes();
      try {
        Recorded recorded = codec.decode(bytes, stored.privates());
        if (!events.isEmpty() && recorded.recordedAt() < events.get(at - 1).recordedAt()) {
          problems.add("event " + (at + 1) + " was recorded before the one before it");
        }
        if (recorded.happenedAt() > recorded.recordedAt()) {
          problems.add("event " + (at + 1) + " happened after it was recorded");
        }
        events.add(recorded);
        replayed.add(board.apply(replayed.get(at), at + 1, recorded));
      } catch (UnreadableEvent e) {
        problems.add("event " + (at + 1) + " can't be read: " + e.getMessage());
        return;
      }
    }
  }

  /** When all is over. */
  void end(List<Client> clients, Stored stored, List<String> violations) {
    replay(stored);
    problems.addAll(violations);
    problems.addAll(JournalCheck.check(stored).problems());
    Map<CommandId, Receipt> receipts = new HashMap<>();
    stored.receipts().forEach(receipt -> receipts.put(receipt.command(), receipt));
    Map<CommandId, Integer> counts = new HashMap<>();
    events.forEach(event -> counts.merge(event.command(), 1, Integer::sum));
    for (Client client : clients) {
      CommandId id = client.submission.id();
      answers(client, receipts.get(id));
      int written = counts.getOrDefault(id, 0);
      if (written != client.events) {
        problems.add(id + " has " + written + " events in the journal, not " + client.events);
      }
    }
  }

  private void answers(Client client, Receipt receipt) {
    CommandId id = client.submission.id();
    if (!client.settled()) {
      problems.add(id + " was never answered");
      return;
    }
    if (Set.copyOf(client.answers).size() > 1) {
      problems.add(id + " was answered in several ways: " + Set.copyOf(client.answers));
    }
    if (receipt == null) {
      problems.add(id + " was answered " + client.answers.get(0) + " and has no receipt");
    } else if (client.answers.get(0) instanceof Reply.Done done) {
      acknowledged(client, done, receipt);
    } else if (client.answers.get(0) instanceof Reply.Refused refused
        && !(receipt.refusal() != null
            && receipt.refusal().code() == refused.code()
            && receipt.refusal().words().equals(refused.words()))) {
      problems.add(id + " was refused with " + refused + ", its receipt says " + receipt);
    }
    for (Reply other : client.answersToOther) {
      if (!(other instanceof Reply.Refused refused && refused.code() == RefusalCode.ID_REUSED)) {
        problems.add(id + " was used for something else and answered " + other);
      }
    }
  }

  private void acknowledged(Client client, Reply.Done done, Receipt receipt) {
    CommandId id = client.submission.id();
    if (receipt.refusal() != null || receipt.toSeq() != done.upTo()) {
      problems.add(id + " was acknowledged up to " + done.upTo() + ", its receipt is " + receipt);
    }
    if (done.upTo() > events.size()) {
      problems.add(id + " was acknowledged up to " + done.upTo() + " and is lost");
      return;
    }
    for (long seq = receipt.fromSeq() + 1; seq <= Math.min(done.upTo(), events.size()); seq++) {
      Recorded event = events.get((int) seq - 1);
      boolean mine =
          event.command().equals(id)
              && event.event() instanceof Event.Noted noted
              && noted.text().text().equals(client.text);
      if (!mine) {
        problems.add("event " + seq + " is not what " + id + " was acknowledged for");
      }
    }
  }
}
