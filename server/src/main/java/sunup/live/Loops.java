package sunup.live;

import io.vertx.core.Context;
import io.vertx.core.internal.ContextInternal;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The event loops of a server: one object each, however many sockets it has. From any thread. */
final class Loops {
  private final Map<Object, Loop> known = new ConcurrentHashMap<>();

  Loop of(Context context) {
    ContextInternal inside = (ContextInternal) context;
    return known.computeIfAbsent(inside.nettyEventLoop(), loop -> new OfContext(inside));
  }

  private record OfContext(ContextInternal context) implements Loop {
    @Override
    public void run(Runnable task) {
      context.runOnContext(v -> task.run());
    }

    @Override
    public boolean here() {
      return context.inThread();
    }
  }
}
