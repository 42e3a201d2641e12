package sunup.http;

import io.vertx.core.Vertx;
import sunup.access.Subscribing;
import sunup.board.MorningId;
import sunup.board.OpenAsk;
import sunup.live.Nudges;
import sunup.push.PushSender;
import sunup.push.PushWay;

/**
 * Tells the phones of those whom something is asked of: who they are, and what goes out to them.
 */
final class Phones implements Nudges {
  private final Subscribing subscribing;
  private final PushWay way;
  private final PushSender sender;

  Phones(Vertx vertx, Subscribing subscribing, PushWay way) {
    this.subscribing = subscribing;
    this.way = way;
    this.sender = new PushSender(vertx, subscribing.key(), way);
  }

  @Override
  public long afterMs() {
    return way.afterMs();
  }

  @Override
  public void tell(MorningId morning, OpenAsk ask) {
    long now = subscribing.now();
    for (Subscribing.Phone phone : subscribing.of(morning.suite(), ask.of())) {
      sender.send(phone.subscription(), phone.terms(), now, phone.gone());
    }
  }

  void close() {
    sender.close();
  }
}
