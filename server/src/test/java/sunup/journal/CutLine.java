package sunup.journal;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** Stands between a program and its server, and cuts their line when the test says so. */
public final class CutLine implements AutoCloseable {
  private static final int CHUNK = 8_192;

  /** What happens to the next that the program says. */
  enum Cut {
    NO,
    /** It does not reach the server, and the line is cut. */
    BEFORE_IT_ARRIVES,
    /** It reaches the server; the line is cut at its answer. */
    BEFORE_THE_ANSWER
  }

  private final ServerSocket door;
  private final int serverPort;
  private final Set<Socket> open = ConcurrentHashMap.newKeySet();
  private volatile Cut cut = Cut.NO;
  private volatile boolean away;

  public CutLine(int serverPort) throws IOException {
    this.serverPort = serverPort;
    this.door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    begin(this::accept);
  }

  public int port() {
    return door.getLocalPort();
  }

  void next(Cut what) {
    cut = what;
  }

  /** While it is away, lines end at once. */
  public void away(boolean now) throws IOException {
    away = now;
    if (now) {
      for (Socket one : open) {
        one.close();
      }
      open.clear();
    }
  }

  private static void begin(Runnable what) {
    Thread thread = new Thread(what, "cut-line");
    thread.setDaemon(true);
    thread.start();
  }

  private void accept() {
    try {
      while (true) {
        Socket program = door.accept();
        if (away) {
          program.close();
          continue;
        }
        Socket server = new Socket(InetAddress.getLoopbackAddress(), serverPort);
        open.add(program);
        open.add(server);
        begin(() -> carry(program, server, Cut.BEFORE_IT_ARRIVES));
        begin(() -> carry(server, program, Cut.BEFORE_THE_ANSWER));
      }
    } catch (IOException e) {
      // Closed.
    }
  }

  private void carry(Socket from, Socket to, Cut mine) {
    try (from;
        to) {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      byte[] some = new byte[CHUNK];
      int count = in.read(some);
      while (count >= 0 && cut != mine) {
        out.write(some, 0, count);
        out.flush();
        count = in.read(some);
      }
      cut = count >= 0 ? Cut.NO : cut;
    } catch (IOException e) {
      // The other direction ended it.
    }
  }

  @Override
  public void close() throws IOException {
    door.close();
    for (Socket one : open) {
      one.close();
    }
  }
}
