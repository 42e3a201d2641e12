package sunup.http;

import io.vertx.core.Context;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.ext.web.RoutingContext;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import sunup.codec.Json;

/** How API handlers answer: JSON that nobody keeps, made off the event loop where it takes long. */
final class Answers {
  private static final Logger LOG = LoggerFactory.getLogger(Answers.class);

  private Answers() {}

  /** A request that is answered with a problem. */
  static final class Wrong extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    Wrong(String title, int status, String detail) {
      super(detail);
      this.problem = new Problem(title, status, detail);
    }

    void send(RoutingContext context) {
      problem.send(context);
    }
  }

  /** Work of a request that may find that it can't be answered. */
  interface Work {
    Object call() throws Wrong;
  }

  /** Answers with what the work yields at once. */
  static void now(RoutingContext context, Work work) {
    try {
      json(context, 200, work.call());
    } catch (Wrong wrong) {
      wrong.send(context);
    }
  }

  static void json(RoutingContext context, int status, Object value) {
    json(context, status, Buffer.buffer(Json.bytes(value)));
  }

  private static void json(RoutingContext context, int status, Buffer bytes) {
    send(context, status, "application/json", bytes);
  }

  private static void send(RoutingContext context, int status, String type, Buffer bytes) {
    if (!context.response().ended() && !context.response().closed()) {
      context
          .response()
          .setStatusCode(status)
          .putHeader("Content-Type", type)
          .putHeader("Cache-Control", "no-store")
          .end(bytes);
    }
  }

  /** Answers with what the work yields; 503 if the pool has no room for it. */
  static void later(
      Vertx vertx, RoutingContext context, Executor pool, Callable<? extends Object> work) {
    later(
        vertx,
        context,
        pool,
        () -> Buffer.buffer(Json.bytes(work.call())),
        bytes -> json(context, 200, bytes));
  }

  /** The same with a file of comma-separated text. */
  static void csv(
      Vertx vertx, RoutingContext context, Executor pool, String name, Callable<String> work) {
    later(
        vertx,
        context,
        pool,
        () -> Buffer.buffer(work.call()),
        bytes -> {
          context
              .response()
              .putHeader("Content-Disposition", "attachment; filename=\"" + name + "\"");
          send(context, 200, "text/csv; charset=utf-8", bytes);
        });
  }

  private static void later(
      Vertx vertx,
      RoutingContext context,
      Executor pool,
      Callable<Buffer> work,
      Consumer<Buffer> then) {
    Context back = vertx.getOrCreateContext();
    try {
      pool.execute(() -> run(context, back, work, then));
    } catch (RejectedExecutionException full) {
      context.response().putHeader("Retry-After", "1");
      new Problem("Busy", 503, "Too much is asked at once. Ask again in a second.").send(context);
    }
  }

  private static void run(
      RoutingContext context, Context back, Callable<Buffer> work, Consumer<Buffer> then) {
    try {
      Buffer bytes = work.call();
      back.runOnContext(v -> then.accept(bytes));
    } catch (Wrong wrong) {
      back.runOnContext(v -> wrong.send(context));
    } catch (Exception e) {
      LOG.error("{} failed", context.request().path(), e);
      back.runOnContext(v -> Guard.problem(500).send(context));
    }
  }

  /** The request's body if it is of this type. */
  static byte[] body(RoutingContext context, String type) throws Wrong {
    String given = context.request().getHeader("Content-Type");
    if (given == null || !given.toLowerCase(java.util.Locale.ROOT).startsWith(type)) {
      throw new Wrong("Another type", 415, "Send it with Content-Type: " + type + ".");
    }
    Buffer body = context.body() == null ? null : context.body().buffer();
    if (body == null || body.length() == 0) {
      throw new Wrong("Empty", 400, "The request has no body.");
    }
    return body.getBytes();
  }
}
