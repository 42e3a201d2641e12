package sunup.http;

import io.vertx.core.http.HttpServerOptions;
import io.vertx.core.http.HttpVersion;
import io.vertx.core.net.ServerSSLOptions;
import java.util.List;
import sunup.live.LiveEndpoint;
import sunup.tls.Identity;
import sunup.tls.TlsOptions;

/**
 * How connections come in and what they may take up before anybody knows whose they are.
 *
 * @param tls how it speaks TLS, or null for none
 * @param sidePort port for metrics and health in detail, 0 takes a free one, null for none
 * @param sideHost its address
 * @param requestMs real milliseconds in which a request must be here whole
 * @param idleMs real milliseconds that a connection may stay open with nothing under way
 * @param connectionsMax open connections
 * @param connectionsPerAddressMax open connections from one address
 */
public record Doors(
    TlsOptions tls,
    Integer sidePort,
    String sideHost,
    int requestMs,
    int idleMs,
    int connectionsMax,
    int connectionsPerAddressMax) {
  /** Bytes of the first line of a request, and of its headers. */
  static final int FIRST_LINE_BYTES_MAX = 4 * 1024;

  static final int HEADER_BYTES_MAX = 8 * 1024;

  /** Seconds without a byte in either direction after which a connection is closed. */
  static final int SILENT_SECONDS = 75;

  /** Without TLS and second port, with the usual limits. */
  public static final Doors PLAIN =
      new Doors(null, null, ServerOptions.DEFAULT_HOST, 20_000, 75_000, 8_192, 2_048);

  /** The same with TLS, or without if it is null. */
  public Doors with(TlsOptions other) {
    return new Doors(
        other, sidePort, sideHost, requestMs, idleMs, connectionsMax, connectionsPerAddressMax);
  }

  /** The same with a second port. */
  public Doors beside(Integer port, String host) {
    return new Doors(tls, port, host, requestMs, idleMs, connectionsMax, connectionsPerAddressMax);
  }

  /** The same with other limits. */
  public Doors limited(int wholeMs, int stillMs, int connections, int perAddress) {
    return new Doors(tls, sidePort, sideHost, wholeMs, stillMs, connections, perAddress);
  }

  /** The same where so many screens may come from one address: a page may take two connections. */
  public Doors fromOneAddress(int screens) {
    int perAddress = Math.max(connectionsPerAddressMax, 2 * screens);
    return limited(requestMs, idleMs, Math.max(connectionsMax, perAddress), perAddress);
  }

  /** The main port's options. */
  HttpServerOptions open(ServerOptions options, Identity identity) {
    HttpServerOptions open =
        limited(LiveEndpoint.options(options.limits()))
            .setHost(options.host())
            .setPort(options.port());
    if (identity != null) {
      open.setSsl(true);
      open.setUseAlpn(true);
      open.setAlpnVersions(List.of(HttpVersion.HTTP_2, HttpVersion.HTTP_1_1));
      // The other implementation sends a Chromium the headers of some answers and never their
      // bodies; without TLS this one takes no sockets (Vert.x 5.1.6).
      open.setHttp2MultiplexImplementation(true);
      ServerSSLOptions ssl = identity.ssl(requestMs);
      open.setKeyCertOptions(ssl.getKeyCertOptions());
      open.setEnabledSecureTransportProtocols(ssl.getEnabledSecureTransportProtocols());
      open.setSslHandshakeTimeout(ssl.getSslHandshakeTimeout());
      open.setSslHandshakeTimeoutUnit(ssl.getSslHandshakeTimeoutUnit());
    }
    return open;
  }

  HttpServerOptions openSide() {
    return limited(new HttpServerOptions()).setHost(sideHost).setPort(sidePort);
  }

  private HttpServerOptions limited(HttpServerOptions open) {
    return open.setMaxInitialLineLength(FIRST_LINE_BYTES_MAX)
        .setMaxHeaderSize(HEADER_BYTES_MAX)
        .setIdleTimeout(SILENT_SECONDS);
  }
}
