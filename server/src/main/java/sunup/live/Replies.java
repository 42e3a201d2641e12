package sunup.live;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import sunup.board.CommandId;
import sunup.board.RefusalCode;
import sunup.codec.Json;
import sunup.suites.Reply;
import sunup.wire.ServerMessage;

/** Answers to commands as they are written on the wire. */
final class Replies {
  private static final int WORDS_MAX = 300;

  private Replies() {}

  static ServerMessage.Answer of(CommandId id, Reply reply) {
    if (reply instanceof Reply.Done done) {
      return new ServerMessage.Answer(id, "done", done.upTo(), null, null);
    }
    if (reply instanceof Reply.Refused refused) {
      return new ServerMessage.Answer(id, "refused", null, refused.code().code(), refused.words());
    }
    return later(id, ((Reply.Later) reply).words());
  }

  /** Not now: the screen keeps it and sends it again. */
  static ServerMessage.Answer later(CommandId id, String words) {
    return new ServerMessage.Answer(id, "later", null, null, words);
  }

  /** A command that can't be read is refused under its id, so that it does not wait for ever. */
  static ServerMessage unreadable(byte[] bytes, String why) {
    String words = why.length() > WORDS_MAX ? why.substring(0, WORDS_MAX) : why;
    CommandId id = idOfSend(bytes);
    RefusalCode code = RefusalCode.BAD_COMMAND;
    return id == null
        ? new ServerMessage.Trouble("bad-message", words)
        : new ServerMessage.Answer(id, "refused", null, code.code(), code.say(words));
  }

  /** The id of a command that can't be read as a whole, or null. */
  private static CommandId idOfSend(byte[] bytes) {
    try {
      JsonNode tree = Json.mapper().readTree(bytes);
      boolean sends = tree != null && tree.path("m").asText().equals("send");
      return sends && tree.path("id").isTextual() ? new CommandId(tree.path("id").asText()) : null;
    } catch (IOException | IllegalArgumentException e) {
      return null;
    }
  }
}
