package sunup.board;

import java.util.ArrayList;
import java.util.List;

/** A morning under test: gives orders at times, keeps the journal and the last outcome. */
public final class Day {
  private final List<Recorded> journal = new ArrayList<>();
  private Morning morning = Morning.NONE;
  private Outcome last;
  private int commands;
  private CommandId lastId;

  /** The fixture's morning, planned and not yet open. */
  public static Day draft() {
    return new Day()
        .at(Fixture.BEGIN - 60 * Fixture.MINUTE)
        .by(Fixture.DESK, new Command.Plan(Fixture.plan()));
  }

  /** The fixture's morning, opened at half past six. */
  public static Day open() {
    return draft().at(Fixture.BEGIN).by(Fixture.DESK, new Command.OpenMorning());
  }

  /** The same, at a site with an approved list of drugs. */
  public static Day openWithDrugs() {
    return new Day()
        .at(Fixture.BEGIN - 60 * Fixture.MINUTE)
        .by(Fixture.DESK, new Command.Plan(Fixture.planWithDrugs()))
        .at(Fixture.BEGIN)
        .by(Fixture.DESK, new Command.OpenMorning());
  }

  private long now = Fixture.BEGIN;

  /** Sets the owner's clock. */
  public Day at(long time) {
    now = time;
    return this;
  }

  /** Sets the owner's clock to minutes after half past six. */
  public Day minute(double minute) {
    return at(Fixture.BEGIN + Math.round(minute * Fixture.MINUTE));
  }

  /** A command of this moment. */
  public Day by(Actor actor, Command command) {
    return order(actor, command, null, now);
  }

  /** A decision on what the actor sees now. */
  public Day decided(Actor actor, Command command) {
    return order(actor, command, morning.seq(), now);
  }

  /** A command that was touched at another time than it arrives. */
  public Day touched(double minute, Actor actor, Command command) {
    return order(actor, command, null, Fixture.BEGIN + Math.round(minute * Fixture.MINUTE));
  }

  /** A command in full. */
  public Day order(Actor actor, Command command, Long seen, long happenedAt) {
    lastId = new CommandId("c" + ++commands);
    return order(new Order(lastId, command, actor, seen, happenedAt, now));
  }

  public Day order(Order order) {
    last = Board.decide(morning, order);
    if (last instanceof Outcome.Accepted accepted) {
      for (Recorded event : accepted.events()) {
        journal.add(event);
        morning = Board.apply(morning, morning.seq() + 1, event);
      }
    }
    return this;
  }

  public Morning morning() {
    return morning;
  }

  public long now() {
    return now;
  }

  public CommandId lastId() {
    return lastId;
  }

  public Outcome last() {
    return last;
  }

  public List<Recorded> journal() {
    return List.copyOf(journal);
  }

  /** The events of the last command; fails if it was refused. */
  public List<Event> events() {
    if (last instanceof Outcome.Accepted accepted) {
      return accepted.events().stream().map(Recorded::event).toList();
    }
    throw new AssertionError("refused: " + last);
  }

  /** The refusal of the last command; fails if it was accepted. */
  public RefusalCode code() {
    if (last instanceof Outcome.Refused refused) {
      return refused.code();
    }
    throw new AssertionError("accepted: " + last);
  }

  /** What the last refusal says to people. */
  public String words() {
    if (last instanceof Outcome.Refused refused) {
      return refused.code().say(refused.detail());
    }
    throw new AssertionError("accepted: " + last);
  }

  public ItemState state(ItemRef ref) {
    return morning.stateOf(ref, now);
  }

  public Item item(ItemRef ref) {
    return morning.item(ref);
  }
}
