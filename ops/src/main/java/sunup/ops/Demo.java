package sunup.ops;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import sunup.codec.Json;

/** The demo's files as its folder holds them: the invented site, its case list and its story. */
record Demo(Path siteFile, Path caseList, Path storyFile, ZoneId zone) {
  static Demo open(DemoFolder folder) throws IOException {
    Path site = folder.file("site.json");
    JsonNode read = Json.mapper().readTree(Files.readAllBytes(site));
    return new Demo(
        site,
        folder.file("cases.csv"),
        folder.file("story.json"),
        ZoneId.of(read.path("zone").asText()));
  }
}
