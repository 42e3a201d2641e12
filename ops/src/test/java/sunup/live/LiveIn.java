package sunup.live;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import sunup.board.Command;
import sunup.codec.Json;
import sunup.fuzz.Decoder;
import sunup.fuzz.Must;
import sunup.fuzz.Sample;
import sunup.wire.AccessAsk;
import sunup.wire.ClientMessage;

/** What the sockets read. */
public final class LiveIn {
  private LiveIn() {}

  public static List<Decoder> all() {
    return List.of(
        new Decoder("client-message", messages(), LiveIn::message),
        Decoder.ofText(
            "subprotocols",
            List.of(LiveEndpoint.SUBPROTOCOL, "a, sunup.1", "sunup.2"),
            LiveEndpoint::offersOurs));
  }

  private static List<byte[]> messages() {
    List<byte[]> seeds = new ArrayList<>(Sample.of(ClientMessage.class));
    for (byte[] command : Sample.of(Command.class)) {
      seeds.add(
          bytes(
              "{\"m\":\"send\",\"id\":\"c1\",\"touchedAt\":1,\"offset\":0,\"command\":"
                  + text(command)
                  + "}"));
    }
    for (byte[] ask : Sample.of(AccessAsk.class)) {
      seeds.add(bytes("{\"m\":\"manage\",\"id\":\"c1\",\"ask\":" + text(ask) + "}"));
    }
    return seeds;
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static boolean message(byte[] bytes) {
    ClientMessage message = Must.json(bytes, ClientMessage.class);
    if (message == null) {
      Must.be(Json.bytes(Replies.unreadable(bytes, "why")).length > 0, "no answer");
      return false;
    }
    return Complete.missing(message).isEmpty();
  }
}
