package sunup.live;

import io.vertx.core.buffer.Buffer;
import java.util.ArrayList;
import java.util.List;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.wire.Audience;
import sunup.wire.ServerMessage;

/** A screen that keeps what it got. */
final class Kept implements Screen {
  private final Audience audience;
  private final boolean failing;
  final List<ServerMessage> messages = new ArrayList<>();

  Kept(Audience audience) {
    this(audience, false);
  }

  /**
   * @param failing true: takes a view and a beat and fails at all that follows
   */
  Kept(Audience audience, boolean failing) {
    this.audience = audience;
    this.failing = failing;
  }

  @Override
  public Audience audience() {
    return audience;
  }

  @Override
  public void view(Buffer message) {
    keep(message);
  }

  @Override
  public void frame(Buffer message) {
    keep(message);
  }

  @Override
  public void beat(Buffer message, long madeAt) {
    keep(message);
  }

  private void keep(Buffer message) {
    if (failing && messages.size() >= 2) {
      throw new IllegalStateException("planted by the test");
    }
    try {
      messages.add(Json.read(message.getBytes(), ServerMessage.class));
    } catch (BadJson e) {
      throw new IllegalStateException(e);
    }
  }

  void clear() {
    messages.clear();
  }

  List<ServerMessage.Frame> frames() {
    return of(ServerMessage.Frame.class);
  }

  List<ServerMessage.Beat> beats() {
    return of(ServerMessage.Beat.class);
  }

  ServerMessage.Frame last() {
    return frames().get(frames().size() - 1);
  }

  private <M extends ServerMessage> List<M> of(Class<M> kind) {
    return messages.stream().filter(kind::isInstance).map(kind::cast).toList();
  }
}
