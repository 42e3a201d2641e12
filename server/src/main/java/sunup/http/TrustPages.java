package sunup.http;

import io.vertx.core.buffer.Buffer;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import java.io.ByteArrayInputStream;
import java.security.GeneralSecurityException;
import java.security.cert.CertificateFactory;
import sunup.tls.Identity;

/** The site root for a new screen: to be compared with the board's own print, then installed. */
final class TrustPages {
  static final String PATH = "/trust";

  private static final String STYLE =
      "body{font:18px/1.5 sans-serif;max-width:42em;margin:2em auto;padding:0 1em;"
          + "color:#1b1b1b;background:#fff}code{font-size:1.05em;overflow-wrap:anywhere}"
          + "a{color:#0b4a8f}li{margin:.5em 0}";

  private static final String PAGE =
      """
      <!doctype html>
      <html lang="en">
      <head>
      <meta charset="utf-8">
      <meta name="viewport" content="width=device-width, initial-scale=1">
      <title>Sunup: make this screen trust the board</title>
      <link rel="stylesheet" href="/trust/page.css">
      </head>
      <body>
      <main>
      <h1>Make this screen trust the board</h1>
      <p>This hospital's board made a root certificate of its own. A screen that has it installed
      knows the board and is not fooled by another machine. It is done once a screen.</p>
      <ol>
      <li>Compare this fingerprint with the one that the board printed when it was started, letter
      by letter, or with the printed one beside the machine. If they differ, stop and call whoever
      looks after the board.<br><code>FINGERPRINT</code></li>
      <li>Fetch the root: <a href="/trust/root.cer">for Windows, Android and phones</a>,
      <a href="/trust/root.pem">for Linux, macOS and browsers with a store of their own</a>.</li>
      <li>Install it as an authority that may identify web sites. Windows: open it, install for this
      machine, "Trusted Root Certification Authorities". macOS: open it in Keychain Access, System,
      then trust always. Android and iOS: Settings, security, install a CA certificate. A Chromium
      on Linux: Settings, privacy and security, manage certificates, authorities, import.</li>
      <li>Close the browser, open it again and open <a href="/">the board</a>. The warning is gone.
      If not, this address is not among the board's names: use one that it was started with.</li>
      </ol>
      <p>Nothing here is secret. The root's key stays on the board's machine.</p>
      </main>
      </body>
      </html>
      """;

  private final Identity identity;

  TrustPages(Identity identity) {
    this.identity = identity;
  }

  void mount(Router router) {
    router.get(PATH).handler(c -> send(c, "text/html; charset=utf-8", page()));
    router
        .get(PATH + "/page.css")
        .handler(c -> send(c, "text/css; charset=utf-8", Buffer.buffer(STYLE)));
    router
        .get(PATH + "/root.pem")
        .handler(
            c -> file(c, "application/x-pem-file", "root.pem", Buffer.buffer(identity.rootPem())));
    router
        .get(PATH + "/root.cer")
        .handler(c -> file(c, "application/x-x509-ca-cert", "root.cer", der(identity.rootPem())));
  }

  private Buffer page() {
    return Buffer.buffer(PAGE.replace("FINGERPRINT", identity.rootFingerprint()));
  }

  private static Buffer der(byte[] pem) {
    try {
      return Buffer.buffer(
          CertificateFactory.getInstance("X.509")
              .generateCertificate(new ByteArrayInputStream(pem))
              .getEncoded());
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("the site root can't be read", e);
    }
  }

  private static void file(RoutingContext context, String type, String name, Buffer bytes) {
    context.response().putHeader("Content-Disposition", "attachment; filename=\"" + name + "\"");
    send(context, type, bytes);
  }

  private static void send(RoutingContext context, String type, Buffer bytes) {
    context
        .response()
        .putHeader("Content-Type", type)
        .putHeader("Cache-Control", "no-cache")
        .end(bytes);
  }
}
