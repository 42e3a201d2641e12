package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import sunup.board.Command;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.codec.Maybe;

/** What a screen sends. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "m")
@JsonSubTypes({
  @JsonSubTypes.Type(value = ClientMessage.Hello.class, name = "hello"),
  @JsonSubTypes.Type(value = ClientMessage.Send.class, name = "send"),
  @JsonSubTypes.Type(value = ClientMessage.AskView.class, name = "ask-view"),
  @JsonSubTypes.Type(value = ClientMessage.Tick.class, name = "tick"),
  @JsonSubTypes.Type(value = ClientMessage.Prove.class, name = "prove"),
  @JsonSubTypes.Type(value = ClientMessage.NewKey.class, name = "new-key"),
  @JsonSubTypes.Type(value = ClientMessage.FirstLink.class, name = "first-link"),
  @JsonSubTypes.Type(value = ClientMessage.SignOn.class, name = "sign-on"),
  @JsonSubTypes.Type(value = ClientMessage.SignOff.class, name = "sign-off"),
  @JsonSubTypes.Type(value = ClientMessage.SignIn.class, name = "sign-in"),
  @JsonSubTypes.Type(value = ClientMessage.SignedIn.class, name = "signed-in"),
  @JsonSubTypes.Type(value = ClientMessage.Countersign.class, name = "countersign"),
  @JsonSubTypes.Type(value = ClientMessage.Manage.class, name = "manage"),
  @JsonSubTypes.Type(value = ClientMessage.PushOn.class, name = "push-on"),
  @JsonSubTypes.Type(value = ClientMessage.PushOff.class, name = "push-off"),
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
   * @param person who is signed on, or absent; where screens are paired it says nothing
   * @param session where screens are paired: the sign-on that it was touched under, or absent for a
   *     touch that nobody signed
   * @param second the token of a {@link Countersign}, or absent
   */
  record Send(
      CommandId id,
      @Maybe MorningId morning,
      @Maybe Long seen,
      long touchedAt,
      long offset,
      @Maybe PersonId person,
      @Maybe String session,
      @Maybe String second,
      Command command)
      implements ClientMessage {
    /** Where screens are not paired. */
    public Send(
        CommandId id,
        MorningId morning,
        Long seen,
        long touchedAt,
        long offset,
        PersonId person,
        Command command) {
      this(id, morning, seen, touchedAt, offset, person, null, null, command);
    }

    /** Of one signature. */
    public Send(
        CommandId id,
        MorningId morning,
        Long seen,
        long touchedAt,
        long offset,
        PersonId person,
        String session,
        Command command) {
      this(id, morning, seen, touchedAt, offset, person, session, null, command);
    }
  }

  /** The screen found a gap. */
  record AskView() implements ClientMessage {}

  /** Measures the clocks; answered at once with {@link ServerMessage.Tock}. */
  record Tick(long sentAt) implements ClientMessage {}

  /**
   * Who the screen is: the answer to a {@link ServerMessage.Challenge}.
   *
   * @param key its public key: SubjectPublicKeyInfo of a P-256 key, base64url
   * @param signature ECDSA with SHA-256 over {@code sunup prove}, the page's origin and the nonce,
   *     a line each, as r and s of 32 bytes each, base64url
   */
  record Prove(String key, String signature) implements ClientMessage {}

  /**
   * A new key for this screen. The old one counts until the new one was used at a connect.
   *
   * @param signature by the new key, over {@code sunup new-key}, origin and the socket's nonce
   */
  record NewKey(String key, String signature) implements ClientMessage {}

  /**
   * The first administrator, by the link that the board's console printed once.
   *
   * @param link the link's secret
   * @param code what the person is called here: no name
   */
  record FirstLink(String link, String code, String pin) implements ClientMessage {}

  /**
   * Somebody signs on at this screen; whoever was signed on before is not any more.
   *
   * @param role one of the person's, or absent for the one that fits
   * @param as the person of this morning's plan that he or she is, or absent
   */
  record SignOn(String code, String pin, @Maybe Role role, @Maybe PersonId as)
      implements ClientMessage {}

  /**
   * Somebody wants to sign on by the site's identity provider; the answer has the address to go to.
   *
   * @param path of the page, to which the browser comes back
   * @param role one of the person's, or absent for the one that fits
   * @param as the person of this morning's plan that he or she is, or absent
   */
  record SignIn(String path, @Maybe Role role, @Maybe PersonId as) implements ClientMessage {}

  /**
   * What the browser brought back from there.
   *
   * @param iss the issuer, if the provider names it
   */
  record SignedIn(String code, String state, @Maybe String iss) implements ClientMessage {}

  /**
   * A second person signs one touch of whoever is signed on here. The answer has a token, which
   * counts once and for a minute, for one command of this kind on this morning from this screen.
   *
   * @param as the person of this morning's plan that he or she is, or absent
   * @param kind the type of the command that is signed, for example {@code count-drug}
   */
  record Countersign(String code, String pin, @Maybe PersonId as, MorningId morning, String kind)
      implements ClientMessage {}

  /**
   * A phone wants to be told by its browser's push service when something is asked of whoever is
   * signed on at it now, for as long as that lasts.
   *
   * @param endpoint where that service takes messages for it
   * @param key the browser's public key, a point on P-256 of 65 bytes, base64url
   * @param auth the browser's secret of 16 bytes, base64url
   */
  record PushOn(String endpoint, String key, String auth) implements ClientMessage {}

  /** It does not want to be told any more. */
  record PushOff() implements ClientMessage {}

  /** Nobody is signed on here any more. */
  record SignOff() implements ClientMessage {}

  /**
   * Something about screens and people, by whoever is signed on here.
   *
   * @param id the screen's, for the answer
   */
  record Manage(String id, AccessAsk ask) implements ClientMessage {}
}
