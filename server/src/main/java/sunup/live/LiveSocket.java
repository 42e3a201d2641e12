package sunup.live;

import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.ServerWebSocket;
import io.vertx.core.internal.http.WebSocketInternal;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Function;
import sunup.access.Door;
import sunup.access.Page;
import sunup.board.Actor;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.PersonId;
import sunup.board.RefusalCode;
import sunup.board.Role;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.suites.Clock;
import sunup.suites.Owner;
import sunup.suites.Standpoint;
import sunup.suites.Submission;
import sunup.wire.Audience;
import sunup.wire.ClientMessage;
import sunup.wire.ServerMessage;

/**
 * One screen's socket. All of it happens on the socket's event loop; what the lane sends hops there
 * first.
 *
 * <p>A screen that reads too slowly is not buffered for: beyond {@link Limits#pendingBytesSoft} of
 * unsent bytes its frames are left out, and when all is sent it gets a view.
 */
final class LiveSocket implements Screen, Door.Line {
  /** Close codes of RFC 6455. */
  static final short GOING_AWAY = 1001;

  static final short PROTOCOL_ERROR = 1002;
  static final short POLICY = 1008;
  static final short TOO_BIG = 1009;
  static final short TRY_LATER = 1013;

  /** A screen that waits to be paired hears from the board this often. */
  private static final int DOOR_MS = 4_000;

  /** Real time that a peer has to take the close frame. */
  private static final int FORCE_CLOSE_MS = 2_000;

  private final ServerWebSocket socket;
  private final Loop loop;
  private final Vertx vertx;
  private final MorningsBySuite suites;
  private final Clock clock;
  private final Limits limits;
  private final TokenBucket rate;
  private final TokenBucket strikes;
  private final long helloTimer;
  private final long pulseTimer;

  /** Null where screens are not paired. */
  private final Door door;

  private final long doorTimer;
  private volatile Page page;

  /** Of the suite that it said hello for; null before. */
  private Mornings mornings;

  private String screen;

  /** The morning that the screen has chosen, or null for the one that is on. */
  private MorningId chosen;

  private int inFlight;
  private long pendingBytes;
  private boolean behind;
  private boolean viewAsked;
  private long behindSince;
  private long lastHeard;
  private boolean closing;
  private boolean gone;

  LiveSocket(
      ServerWebSocket socket,
      Loop loop,
      Vertx vertx,
      MorningsBySuite suites,
      Clock clock,
      Limits limits,
      Function<Door.Line, Door> doors) {
    this.socket = socket;
    this.loop = loop;
    this.vertx = vertx;
    this.suites = suites;
    this.clock = clock;
    this.limits = limits;
    long now = realNow();
    this.rate = new TokenBucket(limits.messagesBurst(), limits.messagesPerSecond(), now);
    this.strikes = new TokenBucket(limits.strikesMax(), 1, now);
    this.lastHeard = now;
    this.helloTimer = vertx.setTimer(limits.helloMs(), id -> noHello());
    this.pulseTimer = vertx.setPeriodic(limits.pingMs(), id -> pulse());
    this.door = doors.apply(this);
    this.doorTimer = door == null ? -1 : vertx.setPeriodic(DOOR_MS, id -> door.pulse());
  }

  /** Sets the handlers; called on the socket's context before any message is read. */
  void open(Runnable onClosed) {
    socket.textMessageHandler(text -> received(text.getBytes(StandardCharsets.UTF_8)));
    socket.binaryMessageHandler(bytes -> received(bytes.getBytes()));
    socket.pongHandler(pong -> lastHeard = realNow());
    socket.exceptionHandler(this::broke);
    socket.closeHandler(
        v -> {
          closing = true;
          gone = true;
          vertx.cancelTimer(helloTimer);
          ended();
          onClosed.run();
        });
  }

  @Override
  public Audience audience() {
    return door == null ? page.audience() : door.audience(page);
  }

  @Override
  public Loop loop() {
    return loop;
  }

  @Override
  public void view(Buffer message) {
    loop.runHere(
        () -> {
          viewAsked = false;
          if (pendingBytes > limits.pendingBytesSoft()) {
            fallBehind();
          } else {
            behind = false;
            write(message);
          }
        });
  }

  @Override
  public void frame(Buffer message) {
    loop.runHere(
        () -> {
          if (behind) {
            return;
          }
          if (pendingBytes > limits.pendingBytesSoft()) {
            fallBehind();
          } else {
            write(message);
          }
        });
  }

  @Override
  public void beat(Buffer message, long madeAt) {
    loop.runHere(
        () -> {
          // If the program stood still until the next was due, it proves nothing any more.
          if (!behind && realNow() - madeAt <= mornings.pace().beatMs()) {
            write(message);
          }
        });
  }

  /** Ends the socket because the server ends. */
  void goAway() {
    loop.run(() -> close(GOING_AWAY, "the server is closing; come back shortly"));
  }

  private long realNow() {
    return clock.monotonicMs();
  }

  private void ended() {
    vertx.cancelTimer(pulseTimer);
    vertx.cancelTimer(doorTimer);
    if (door != null) {
      door.closed();
    }
    if (mornings != null) {
      mornings.leave(this);
    }
  }

  private void fallBehind() {
    if (!behind) {
      behind = true;
      behindSince = realNow();
    }
  }

  private void write(Buffer message) {
    if (closing || socket.isClosed()) {
      return;
    }
    if (pendingBytes > limits.pendingBytesMax()) {
      close(TRY_LATER, "reads too slowly");
      return;
    }
    int length = message.length();
    pendingBytes += length;
    socket.writeBinaryMessage(message).onComplete(done -> sent(length));
  }

  private void sent(int length) {
    pendingBytes -= length;
    if (behind && pendingBytes == 0 && !closing) {
      askView();
    }
  }

  private void received(byte[] bytes) {
    if (closing) {
      return;
    }
    long now = realNow();
    lastHeard = now;
    boolean inTime = rate.take(now);
    if (!inTime && !strikes.take(now)) {
      close(POLICY, "far too many messages");
      return;
    }
    ClientMessage message;
    try {
      message = Json.read(bytes, ClientMessage.class);
    } catch (BadJson e) {
      send(Replies.unreadable(bytes, e.getMessage()));
      return;
    }
    if (message == null) {
      trouble("bad-message", "null is no message");
      return;
    }
    Optional<String> missing = Complete.missing(message);
    if (missing.isPresent()) {
      send(Replies.unreadable(bytes, "the field " + missing.get() + " is missing"));
      return;
    }
    if (inTime) {
      take(message);
    } else if (message instanceof ClientMessage.Send send) {
      answer(Replies.later(send.id(), "Too many touches at once; this one will be sent again."));
    } else {
      trouble("too-fast", "Too many messages: at most " + limits.messagesPerSecond() + " a second");
    }
  }

  private void take(ClientMessage message) {
    if (message instanceof ClientMessage.Hello hello) {
      hello(hello);
    } else if (door != null && door.take(message)) {
      return;
    } else if (Greeting.ofPairing(message)) {
      trouble("no-pairing", "This board does not pair screens");
    } else if (page == null && (door == null || !(message instanceof ClientMessage.Tick))) {
      trouble("hello-first", "The first message on a socket is hello");
    } else if (message instanceof ClientMessage.Send send) {
      send(send);
    } else if (message instanceof ClientMessage.Tick tick) {
      send(new ServerMessage.Tock(tick.sentAt(), clock.morningMs(), clock.rate()));
    } else {
      askView();
    }
  }

  /** Asked again before it came, it still comes once. */
  private void askView() {
    if (!viewAsked) {
      viewAsked = true;
      mornings.view(this);
    }
  }

  private void hello(ClientMessage.Hello hello) {
    if (page != null) {
      trouble("hello-twice", "This socket has said hello; open another for another page");
    } else if (door == null) {
      enter(hello);
    } else {
      door.hello(hello);
    }
  }

  @Override
  public void enter(ClientMessage.Hello hello) {
    try {
      Greeting greeting = Greeting.of(hello, suites);
      vertx.cancelTimer(helloTimer);
      page = greeting.page();
      screen = hello.screen();
      mornings = greeting.mornings();
      chosen = greeting.chosen();
      mornings.join(this, chosen, greeting.resumed(), hello.epoch(), hello.n());
    } catch (Greeting.Wrong wrong) {
      trouble(wrong.code(), wrong.getMessage());
    }
  }

  @Override
  public void anew() {
    if (page != null && !closing) {
      mornings.leave(this);
      mornings.join(this, chosen, null, null, null);
    }
  }

  @Override
  public void proved() {
    vertx.cancelTimer(helloTimer);
  }

  @Override
  public void run(Runnable task) {
    loop.run(task);
  }

  @Override
  public Role planned(PersonId post) {
    Standpoint at = mornings == null ? null : mornings.standpoint(chosen);
    Morning.PersonDay known = at == null ? null : at.state().people().get(post);
    return known == null ? null : known.plan().role();
  }

  @Override
  public void close(String why) {
    close(POLICY, why);
  }

  private void send(ClientMessage.Send send) {
    if (send.morning() != null && !mornings.takes(send.morning())) {
      RefusalCode code = RefusalCode.MORNING_CLOSED;
      answer(new ServerMessage.Answer(send.id(), "refused", null, code.code(), code.say("")));
      return;
    }
    if (inFlight >= limits.inFlightMax()) {
      answer(
          Replies.later(
              send.id(), "Too many touches wait for their answer; this one will be sent again."));
      return;
    }
    inFlight++;
    MorningId morning = send.morning() != null ? send.morning() : chosen;
    mornings.owner(morning, owner -> submit(send, morning, owner));
  }

  /** Any thread. */
  private void submit(ClientMessage.Send send, MorningId morning, Owner owner) {
    if (owner == null) {
      answered(Replies.later(send.id(), "The board can't take this now; it will be sent again."));
      return;
    }
    Actor by = door == null ? page.actor(screen, send.person(), null) : door.actor(send);
    if (by == null) {
      answered(Replies.later(send.id(), "This screen is not paired any more."));
      return;
    }
    Submission submission =
        new Submission(send.id(), send.command(), by, send.seen(), send.touchedAt(), send.offset());
    if (door == null) {
      Standpoint at = mornings.standpoint(morning);
      submission = submission.on(page.word());
      // An owner on another node judges the role by itself.
      submission = at == null ? submission : Mornings.judged(submission, at.state());
    }
    owner.submit(submission, reply -> answered(Replies.of(send.id(), reply)));
  }

  /** Any thread. */
  private void answered(ServerMessage.Answer answer) {
    Buffer message = AudienceStream.encode(answer);
    loop.run(
        () -> {
          inFlight--;
          write(message);
        });
  }

  private void answer(ServerMessage.Answer answer) {
    write(AudienceStream.encode(answer));
  }

  @Override
  public void trouble(String code, String words) {
    send(new ServerMessage.Trouble(code, words));
  }

  @Override
  public void send(ServerMessage message) {
    write(AudienceStream.encode(message));
  }

  /** Vert.x tells a message over the limit by an IllegalStateException, all else by others. */
  private void broke(Throwable e) {
    if (e instanceof IllegalStateException) {
      close(TOO_BIG, "a message is at most " + limits.messageBytesMax() + " bytes");
    } else {
      close(PROTOCOL_ERROR, "not understood");
    }
  }

  private void noHello() {
    trouble("hello-first", "No hello came; this socket closes");
    close(POLICY, "no hello");
  }

  private void pulse() {
    long now = realNow();
    if (now - lastHeard > limits.silentMs()) {
      close(GOING_AWAY, "nothing heard");
    } else if (behind && now - behindSince > limits.behindMs()) {
      close(TRY_LATER, "reads too slowly");
    } else if (!socket.isClosed()) {
      socket.writePing(Buffer.buffer());
    }
  }

  private void close(short code, String why) {
    if (!closing) {
      closing = true;
      ended();
      socket.close(code, why);
      vertx.setTimer(FORCE_CLOSE_MS, id -> cut());
    }
  }

  /**
   * Vert.x limits the closing handshake only from the moment when its close frame is written, which
   * never comes with a peer that does not read; and closing the channel as a whole would only ask
   * for that handshake again, so this begins below Vert.x's own handler.
   */
  private void cut() {
    if (!gone) {
      var unused = ((WebSocketInternal) socket).channelHandlerContext().close();
    }
  }
}
