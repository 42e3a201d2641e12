package sunup.cluster;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import java.util.Set;
import sunup.board.MorningId;
import sunup.live.Feed;
import sunup.suites.Submission;
import sunup.wire.Audience;

/**
 * What nodes tell each other. Nodes of neighbouring versions read each other's: fields and kinds
 * that one does not know are left out.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "b", defaultImpl = BusMessage.FromLater.class)
@JsonIgnoreProperties(ignoreUnknown = true)
@JsonSubTypes({
  @JsonSubTypes.Type(value = BusMessage.Hello.class, name = "hello"),
  @JsonSubTypes.Type(value = BusMessage.Pulse.class, name = "pulse"),
  @JsonSubTypes.Type(value = BusMessage.Ask.class, name = BusMessage.ASK),
  @JsonSubTypes.Type(value = BusMessage.Reply.class, name = "reply"),
  @JsonSubTypes.Type(value = BusMessage.Follow.class, name = "follow"),
  @JsonSubTypes.Type(value = BusMessage.Told.class, name = "told"),
  @JsonSubTypes.Type(value = BusMessage.Prepare.class, name = "prepare"),
  @JsonSubTypes.Type(value = BusMessage.Prepared.class, name = "prepared"),
  @JsonSubTypes.Type(value = BusMessage.HandOver.class, name = "hand-over"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface BusMessage {
  /** The kind of {@link Ask}. */
  String ASK = "ask";

  /**
   * First on a line.
   *
   * @param cluster name of the cluster: nodes of another one are not listened to
   */
  record Hello(String from, String cluster) implements BusMessage {}

  /**
   * "I am here", a few times a second, to everybody.
   *
   * @param at the sender's monotonic clock
   * @param echo the last {@code at} that it heard from the receiver, or null
   * @param heldMs how long ago that was
   * @param realMs the sender's real clock
   * @param stays false while it takes no mornings: it leaves, its clock is off, or it can't reach
   *     the journal
   * @param screens open sockets
   * @param claims the mornings that it owns
   * @param unfit mornings that it can't read
   * @param reads types of events that it reads and not every node may; null says none
   * @param hears the nodes that it hears and that hear it; null from one that does not say
   */
  record Pulse(
      long at,
      Long echo,
      long heldMs,
      long realMs,
      boolean stays,
      int screens,
      List<Claim> claims,
      List<MorningId> unfit,
      Set<String> reads,
      Set<String> hears)
      implements BusMessage {}

  /**
   * A morning that the sender owns.
   *
   * @param readOnly true while the journal does not answer it
   */
  record Claim(MorningId morning, long epoch, boolean readOnly) {}

  /**
   * A command for the owner.
   *
   * @param seal by which the owner knows that it is from a node of this board, or null
   */
  record Ask(long id, MorningId morning, Submission submission, String seal) implements BusMessage {
    /** One that nobody has sealed yet. */
    Ask(long id, MorningId morning, Submission submission) {
      this(id, morning, submission, null);
    }

    /** The same under a seal. */
    Ask sealed(String by) {
      return new Ask(id, morning, submission, by);
    }
  }

  /**
   * The answer to a command.
   *
   * @param kind done, refused, later, or not-owner: nothing was done, {@code owner} has it
   */
  record Reply(long id, String kind, Long upTo, String code, String words, String owner)
      implements BusMessage {}

  /** The sender's screens show this morning; once a second. */
  record Follow(MorningId morning, boolean views) implements BusMessage {}

  /**
   * What screens are told; the message itself is the payload.
   *
   * @param echo the last {@link Pulse#at} that was heard from the receiver: it was made after that
   */
  record Told(MorningId morning, Audience audience, Feed.Kind kind, Long echo)
      implements BusMessage {}

  /** A kind of message that this program does not know. */
  record FromLater() implements BusMessage {}

  /** The sender is about to give the morning: read it, so that taking it is quick. */
  record Prepare(MorningId morning) implements BusMessage {}

  /** It was read, or can't be now. */
  record Prepared(MorningId morning) implements BusMessage {}

  /** The sender has let go of the morning: take it. */
  record HandOver(MorningId morning) implements BusMessage {}
}
