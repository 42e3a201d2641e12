package sunup.http;

import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import java.util.Optional;
import sunup.access.Access;

/**
 * Where the identity provider sends a browser back to: on to the page on which it was begun. What
 * it brought goes behind the {@code #}, where no server and no log sees it again, and counts only
 * on a socket of that browser.
 */
final class SignedInPage {
  static final String PATH = "/signed-in";
  private static final int QUERY_MAX = 4_096;

  private final Access access;

  SignedInPage(Access access) {
    this.access = access;
  }

  void mount(Router router) {
    router.get(PATH).handler(this::back);
  }

  private void back(RoutingContext context) {
    String query = context.request().query();
    String state = context.request().getParam("state");
    Optional<String> page = state == null ? Optional.empty() : access.signingInAt(state);
    if (page.isEmpty() || query == null || query.length() > QUERY_MAX) {
      new Problem("Not begun", 400, "This sign-on was not begun here, or is over. Begin it again.")
          .send(context);
      return;
    }
    context
        .response()
        .setStatusCode(303)
        .putHeader("Cache-Control", "no-store")
        .putHeader("Location", page.get() + "#signed-in?" + query)
        .end();
  }
}
