package sunup.ops.bench;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import sunup.codec.Json;
import sunup.intake.SiteFile;

/** Invented suites for measuring: the standard hospital's site file with other rooms and names. */
final class BenchSite {
  /** The local hour in which the measured morning runs, whatever the hour here. */
  private static final int HOUR = 6;

  private BenchSite() {}

  /** Groups of other sizes have other names, so that one database can serve several runs. */
  static String suite(int of, int number) {
    return String.format("group-%d-%04d", of, number);
  }

  /** A zone in which it is between six and seven now. */
  static String zone() {
    int off = HOUR - OffsetDateTime.now(ZoneOffset.UTC).getHour();
    off = off < -12 ? off + 24 : off > 12 ? off - 24 : off;
    // The zone database counts these westward.
    return off == 0 ? "Etc/GMT" : "Etc/GMT" + (off > 0 ? "-" + off : "+" + -off);
  }

  static void write(Path folder, int suites, int rooms, String zone) throws IOException {
    Files.createDirectories(folder);
    for (int i = 1; i <= suites; i++) {
      ObjectNode site = (ObjectNode) Json.mapper().readTree(SiteFile.standardText());
      site.put("suite", suite(suites, i));
      site.put("suiteName", "Suite " + i);
      site.put("zone", zone);
      ArrayNode all = site.putArray("rooms");
      for (int room = 1; room <= rooms; room++) {
        all.addObject().put("id", Integer.toString(room)).putArray("options").add("alone");
      }
      ArrayNode roaming = (ArrayNode) site.path("roaming");
      for (int k = roaming.size() - 1; k >= 0; k--) {
        if (roaming.get(k).path("role").asText().equals("supervisor")) {
          roaming.remove(k);
        }
      }
      Files.write(folder.resolve(suite(suites, i) + ".json"), Json.bytes(site));
    }
  }

  /** The case list of each suite: every fourth room wants the one ultrasound machine. */
  static String cases(int rooms) {
    StringBuilder csv = new StringBuilder("room,start,technique,options,procedure,surgeon,case\n");
    for (int room = 1; room <= rooms; room++) {
      csv.append(room)
          .append(",07:30,general,")
          .append(room % 4 == 0 ? "block" : "")
          .append(",case ")
          .append(room)
          .append(",surgeon-")
          .append(room)
          .append(",c")
          .append(room)
          .append('\n');
    }
    return csv.toString();
  }
}
