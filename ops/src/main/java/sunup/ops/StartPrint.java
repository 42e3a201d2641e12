package sunup.ops;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import sunup.access.Connections;
import sunup.board.SuiteId;
import sunup.http.SunupServer;

/** What a board says when it has started: where its pages are, and what to do first. */
final class StartPrint {
  private StartPrint() {}

  /**
   * Its lines.
   *
   * @param about what it plays or is for; may be empty
   */
  static List<String> of(SunupServer server, DoorOptions doors, String about) {
    String scheme = doors.speaksTls() ? "https" : "http";
    String root = scheme + "://" + doors.reached() + ":" + server.port() + "/";
    List<String> lines = new ArrayList<>();
    lines.add("board " + root);
    lines.add("  wall     " + root + "wall");
    lines.add("  desk     " + root + "desk");
    lines.add("  station  " + root + "station/1    (room 1; put another room's number there)");
    lines.add("  holding  " + root + "holding");
    if (server.rootFingerprint() != null) {
      lines.add("  trust    " + root + "trust    (new screens install the board's root there)");
      lines.add("  its root has the SHA-256 fingerprint " + server.rootFingerprint());
    }
    if (server.sidePort() >= 0) {
      lines.add("  metrics  http://127.0.0.1:" + server.sidePort() + "/metrics");
    }
    server
        .firstLink()
        .ifPresent(
            link -> {
              String of =
                  server.unadministered().isEmpty()
                      ? "this board"
                      : "suite "
                          + server.unadministered().stream()
                              .map(SuiteId::value)
                              .collect(Collectors.joining(", "));
              lines.add("Nobody administers " + of + " yet. Open this once, within 15 minutes:");
              lines.add("  " + root + "desk#first=" + link);
            });
    boolean here = Connections.isLoopback(doors.host());
    String where = here ? "this machine only" : doors.host();
    lines.add("It listens on " + where + ". Ctrl-C ends it.");
    if (!about.isEmpty()) {
      lines.add(about);
    }
    return lines;
  }
}
