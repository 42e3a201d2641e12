package sunup.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.audit.SignedHeads;
import sunup.audit.SigningKeys;
import sunup.bedside.BedsideFigures;
import sunup.board.Morning;
import sunup.board.MorningPlan;
import sunup.board.SiteSettings;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.intake.CaseList;
import sunup.intake.CaseListResult;
import sunup.intake.History;
import sunup.intake.Intake;
import sunup.intake.Planner;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;
import sunup.ops.madeup.DemoPlans;
import sunup.ops.madeup.Scenario;
import sunup.ops.rehearsal.Story;
import sunup.sheets.BadSheet;
import sunup.sheets.Sheet;
import sunup.sheets.SheetReader;
import sunup.sheets.Sheets;

/** What is read of files that a site or its programs write. */
final class FilesIn {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
  private static final Sheets SHEETS = Sheets.standard();
  private static final SiteFile SITE =
      SiteReader.read("site", Project.texts("ops/src/main/resources/demo", "site.json").get(0))
          .site();
  private static final MorningPlan PLAN = plan();
  private static final String DEMO = "ops/src/main/resources/demo";
  private static final Path KEY = temporary();
  private static final Path HEADS = temporary();

  private FilesIn() {}

  static List<Decoder> all() {
    List<String> sites = new ArrayList<>(List.of(SiteFile.standardText()));
    sites.addAll(Project.texts(DEMO, "site.json"));
    return List.of(
        bytes("case-list", Project.texts(DEMO, ".csv"), FilesIn::cases),
        bytes(
            "history",
            List.of(
                "date,room,booked,started,service,cancelled,reason\r\n"
                    + "2025-07-01,1,07:30,07:42,bones,,Surgeon\r\n"
                    + "2025-07-02,2,07:30,,\"b \"\"x\"\"\",yes,\r\n",
                "date;room;booked;started\n2025-07-01;1;7:30;07:31\n"),
            FilesIn::history),
        Decoder.ofText("site-file", sites, FilesIn::site),
        Decoder.ofText("sheet", List.copyOf(Sheets.standardFiles().values()), FilesIn::sheet),
        bytes("story", Project.texts(DEMO, "story.json"), b -> Must.json(b, Story.class) != null),
        bytes("scenario", Project.texts("ops/src/main/resources/year", ".json"), FilesIn::year),
        bytes("signing-key", List.of(pem()), FilesIn::key),
        bytes("signed-heads", List.of("{\"at\":\"x\",\"number\":1}\tAAAA\n"), FilesIn::heads));
  }

  private static Decoder bytes(String name, List<String> seeds, Decoder.Holds holds) {
    return new Decoder(
        name, seeds.stream().map(s -> s.getBytes(StandardCharsets.UTF_8)).toList(), holds);
  }

  private static boolean cases(byte[] csv) {
    boolean taken = false;
    for (CaseList.Take take : CaseList.Take.values()) {
      CaseListResult list = CaseList.read("list", csv, SITE, DAY, SHEETS, take);
      list.problems().forEach(p -> Must.be(!p.toString().isBlank(), "a mistake without words"));
      long at = 1_795_000_000_000L;
      Intake.Taken compared = Intake.compare(list, SITE, DAY, Morning.NONE, at);
      Must.be(Json.bytes(compared.preview()).length > 0, "no preview");
      taken |= list.problems().isEmpty();
    }
    return taken;
  }

  private static boolean history(byte[] csv) {
    History.Result read = History.read("history", csv, SITE);
    Must.be(read.problems().isEmpty() || read.facts().isEmpty(), "taken with mistakes");
    return read.problems().isEmpty();
  }

  private static boolean site(String text) {
    SiteReader.Result read = SiteReader.read("site", text);
    Must.be(read.site() != null || !read.problems().isEmpty(), "refused without a word");
    if (read.site() == null) {
      return false;
    }
    Planner.check(read.site(), SHEETS);
    new BedsideFigures(read.site().bedside()).list(DAY);
    SiteSettings settings = read.site().settings();
    try {
      Must.same(settings, Json.read(Json.bytes(settings), SiteSettings.class));
    } catch (BadJson e) {
      throw new AssertionError("what a plan keeps can't be read again", e);
    }
    return true;
  }

  /** A sheet by itself, then in the place of its kind among the others. */
  private static boolean sheet(String text) {
    SheetReader.Result read = SheetReader.read("sheet", text);
    Must.be(read.sheet() != null || !read.problems().isEmpty(), "refused without a word");
    if (read.sheet() == null) {
      return false;
    }
    Map<String, String> files = new LinkedHashMap<>(Sheets.standardFiles());
    Sheet sheet = read.sheet();
    files.put(sheet.name() + ".json", text);
    try {
      Sheets all = Sheets.of(files);
      for (Sheets.Choice technique : all.techniques()) {
        for (Sheets.Choice option : all.options()) {
          compose(all, technique.name(), List.of(option.name()));
        }
      }
      return true;
    } catch (BadSheet refused) {
      Must.be(!refused.problems().isEmpty(), "refused without a word");
      return false;
    }
  }

  private static void compose(Sheets all, String technique, List<String> options) {
    try {
      Must.be(!all.compose(technique, options).items().isEmpty(), "an empty list");
    } catch (BadSheet refused) {
      Must.be(!refused.problems().isEmpty(), "refused without a word");
    }
  }

  private static MorningPlan plan() {
    try {
      return DemoPlans.of(DAY);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean year(byte[] bytes) {
    Scenario read = Must.json(bytes, Scenario.class);
    if (read == null) {
      return false;
    }
    Must.be(read.mistakes(PLAN).stream().noneMatch(String::isBlank), "a mistake without words");
    return true;
  }

  private static Path temporary() {
    try {
      Path file = Files.createTempFile("sunup-fuzz", ".txt");
      file.toFile().deleteOnExit();
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String pem() {
    try {
      Path folder = Files.createTempDirectory("sunup-fuzz");
      Path file = folder.resolve("key");
      SigningKeys.make(file);
      String text = Files.readString(SigningKeys.publicFile(file));
      Files.delete(file);
      Files.delete(SigningKeys.publicFile(file));
      Files.delete(folder);
      Files.writeString(KEY, text);
      return text;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean key(byte[] bytes) throws IOException {
    Files.write(HEADS, bytes);
    try {
      return SigningKeys.readPublic(HEADS) != null;
    } catch (IOException refused) {
      return false;
    }
  }

  /** Lines that nobody signed: each is told, none is believed. */
  private static boolean heads(byte[] bytes) throws IOException {
    Files.write(HEADS, bytes);
    try {
      SignedHeads read = SignedHeads.read(HEADS, SigningKeys.readPublic(KEY));
      Must.be(read.moments().isEmpty(), "a line that nobody signed was believed");
      Must.be(bytes.length == 0 || !read.problems().isEmpty(), "taken without a word");
      return false;
    } catch (IOException refused) {
      return false;
    }
  }
}
