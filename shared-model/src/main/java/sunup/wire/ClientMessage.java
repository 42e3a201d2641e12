package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.PersonId;
import sunup.codec.Maybe;

/** What a screen sends. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "m")
@JsonSubTypes({
  @JsonSubTypes.Type(value = ClientMessage.Hello.class, name = "hello"),
  @JsonSubTypes.Type(value = ClientMessage.Send.class, name = "send"),
  @JsonSubTypes.Type(value = ClientMessage.AskView.class, name = "ask-view"),
  @JsonSubTypes.Type(value = ClientMessage.Tick.class, name = "tick"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface ClientMessage {
  /**
   * First message on a socket.
   *
   * @param screen the screen's name, for example {@code station-7}
   * @param page wall, desk, station, holding or pocket: decides audience and role
   * @param morning resume this morning, or absent
   * @param epoch the epoch of the last frame seen
   * @param n its number
   * @param date the desk only: the date of the morning that it wants to see, such as {@code
   *     2026-11-26}; absent means the one that is on
   * @param suite the suite that it shows, by its id; absent means the first of the server's
   */
  record Hello(
      String screen,
      String page,
      @Maybe String morning,
      @Maybe Long epoch,
      @Maybe Long n,
      @Maybe String date,
      @Maybe String suite)
      implements ClientMessage {
    /** Of a screen that shows the morning that is on in the server's first suite. */
    public Hello(String screen, String page, String morning, Long epoch, Long n) {
      this(screen, page, morning, epoch, n, null, null);
    }
  }

  /**
   * A command. It may be sent again under the same id until it is answered.
   *
   * @param id UUIDv7
   * @param morning where it belongs, if the screen has seen another date come meanwhile; absent
   *     means the morning that the socket shows
   * @param seen revision of what was shown, or absent
   * @param touchedAt the screen's clock when it was touched
   * @param offset measured: the owner's clock minus the screen's, in milliseconds
   * @param person who is signed on, or absent
   */
  record Send(
      CommandId id,
      @Maybe MorningId morning,
      @Maybe Long seen,
      long touchedAt,
      long offset,
      @Maybe PersonId person,
      Command command)
      implements ClientMessage {}

  /** The screen found a gap. */
  record AskView() implements ClientMessage {}

  /** Measures the clocks; answered at once with {@link ServerMessage.Tock}. */
  record Tick(long sentAt) implements ClientMessage {}
}
