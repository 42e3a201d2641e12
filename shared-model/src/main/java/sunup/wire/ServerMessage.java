package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.codec.Maybe;

/** What the server sends. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "m")
@JsonSubTypes({
  @JsonSubTypes.Type(value = ServerMessage.View.class, name = "view"),
  @JsonSubTypes.Type(value = ServerMessage.Frame.class, name = "frame"),
  @JsonSubTypes.Type(value = ServerMessage.Beat.class, name = "beat"),
  @JsonSubTypes.Type(value = ServerMessage.Answer.class, name = "answer"),
  @JsonSubTypes.Type(value = ServerMessage.Tock.class, name = "tock"),
  @JsonSubTypes.Type(value = ServerMessage.Trouble.class, name = "trouble"),
  @JsonSubTypes.Type(value = ServerMessage.Challenge.class, name = "challenge"),
  @JsonSubTypes.Type(value = ServerMessage.Pairing.class, name = "pairing"),
  @JsonSubTypes.Type(value = ServerMessage.Paired.class, name = "paired"),
  @JsonSubTypes.Type(value = ServerMessage.Signed.class, name = "signed"),
  @JsonSubTypes.Type(value = ServerMessage.Told.class, name = "told"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface ServerMessage {
  /**
   * Everything, at the moment of frame {@code n}.
   *
   * @param epoch the owner's epoch
   * @param n number of the last frame that is included; the next is n + 1
   * @param upTo journal sequence that is included
   * @param forecastOf journal sequence that the figures are computed from
   */
  record View(
      MorningId morning,
      long epoch,
      long n,
      long upTo,
      long forecastOf,
      Audience audience,
      List<Part> parts)
      implements ServerMessage {}

  /** What changed since frame {@code n - 1}. */
  record Frame(
      MorningId morning,
      long epoch,
      long n,
      long upTo,
      long forecastOf,
      Audience audience,
      List<Part> set,
      List<String> gone)
      implements ServerMessage {}

  /**
   * Proof of life, once a second, made by the owner only.
   *
   * @param morningClock the morning's time, which may run faster than real time in a rehearsal
   * @param rate morning seconds per real second
   * @param confirmedAt when the journal last confirmed the owner's epoch, owner's real clock
   * @param readOnly true while the journal does not answer: nothing is taken
   */
  record Beat(
      MorningId morning,
      long epoch,
      long n,
      long upTo,
      long morningClock,
      double rate,
      long confirmedAt,
      boolean readOnly)
      implements ServerMessage {}

  /**
   * The answer to a command.
   *
   * @param status done, refused or later ("not now": keep it and send it again)
   * @param upTo journal sequence of its last event; it is on the board when a frame's upTo reaches
   *     it
   * @param code of a refusal
   * @param words what to do about it
   */
  record Answer(
      CommandId id, String status, @Maybe Long upTo, @Maybe String code, @Maybe String words)
      implements ServerMessage {}

  /** Answer to a tick. */
  record Tock(long sentAt, long morningClock, double rate) implements ServerMessage {}

  /** Something is wrong with what the screen sent; the socket stays open unless it says so. */
  record Trouble(String code, String words) implements ServerMessage {}

  /** Where screens are paired, the answer to a hello: the screen shall prove who it is. */
  record Challenge(String nonce) implements ServerMessage {}

  /**
   * The screen is not known: what it shows until somebody has typed the code at a desk. Comes again
   * every few seconds.
   *
   * @param code to be typed at a desk
   * @param address the screen's, as the board sees it
   * @param at when it asked, epoch milliseconds of real time
   * @param until when the code ends
   * @param provider what the identity provider is called by which somebody may sign on here without
   *     a code, at a browser of his or her own
   */
  record Pairing(String code, String address, long at, long until, @Maybe String provider)
      implements ServerMessage {}

  /**
   * What the screen is.
   *
   * @param screen its name
   * @param room a station's
   * @param pass for requests over HTTP, in the header {@code Sunup-Pass}
   * @param provider what the identity provider is called by which people sign on here too
   * @param push where the site tells phones: the board's public key for the browser's subscription
   */
  record Paired(
      String screen,
      String page,
      String suite,
      @Maybe RoomId room,
      String pass,
      @Maybe String provider,
      @Maybe String push)
      implements ServerMessage {}

  /**
   * Who is signed on here; nobody if all is absent.
   *
   * @param session goes with each touch of this person
   * @param as the person of this morning's plan
   */
  record Signed(@Maybe String session, @Maybe String code, @Maybe Role role, @Maybe PersonId as)
      implements ServerMessage {}

  /**
   * The answer to what was asked about keys, screens and people.
   *
   * @param id of a manage, else the kind of the message
   * @param words what was done, or why not and what to do
   * @param token what a command shows for the second signature that was given
   * @param address of the identity provider, to which the browser goes now
   */
  record Told(
      String id,
      boolean done,
      String words,
      @Maybe AccessList list,
      @Maybe String token,
      @Maybe String address)
      implements ServerMessage {
    /** Words, and perhaps a list. */
    public Told(String id, boolean done, String words, AccessList list) {
      this(id, done, words, list, null, null);
    }
  }
}
