package sunup.http;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;

/** A connection to the board on which a test sends bytes as it likes, as an attacker would. */
final class RawHttp implements AutoCloseable {
  private static final int WAIT_MS = 20_000;
  private final Socket socket;

  RawHttp(int port) throws IOException {
    this.socket = new Socket(InetAddress.getLoopbackAddress(), port);
    socket.setSoTimeout(WAIT_MS);
  }

  /** Sends one request and gives the first line of its answer; {@code closed} if there is none. */
  static String answer(int port, String request) throws IOException {
    try (RawHttp http = new RawHttp(port)) {
      http.send(request);
      return http.line();
    }
  }

  /** The status of the answer to one request, or 0 if the connection was closed without one. */
  static int status(int port, String... lines) throws IOException {
    String line = answer(port, String.join("\r\n", lines) + "\r\n\r\n");
    return line.equals("closed") ? 0 : Integer.parseInt(line.split(" ", 3)[1]);
  }

  RawHttp send(String text) throws IOException {
    try {
      socket.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
      socket.getOutputStream().flush();
    } catch (IOException e) {
      // The board may have closed already; what it said is read next.
    }
    return this;
  }

  /** The next line of what comes, or {@code closed}. */
  String line() throws IOException {
    StringBuilder line = new StringBuilder();
    InputStream in = socket.getInputStream();
    try {
      for (int c = in.read(); c >= 0 && c != '\n'; c = in.read()) {
        line.append((char) c);
      }
    } catch (SocketTimeoutException e) {
      throw new AssertionError("nothing came in " + WAIT_MS + " ms", e);
    } catch (IOException e) {
      return "closed";
    }
    return line.isEmpty() ? "closed" : line.toString().strip();
  }

  /** All that comes until the board closes the connection. */
  String rest() throws IOException {
    try {
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
    } catch (SocketTimeoutException e) {
      throw new AssertionError("the connection was not closed in " + WAIT_MS + " ms", e);
    } catch (IOException e) {
      return "";
    }
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
