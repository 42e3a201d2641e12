package sunup.intake;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import sunup.bedside.BedsideSettings;
import sunup.board.HouseStyle;
import sunup.board.PersonId;
import sunup.board.PlaceId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.SiteSettings;
import sunup.board.Step;
import sunup.board.SuiteId;
import sunup.board.UnitId;
import sunup.board.UnitPlan;
import sunup.codec.Fields;
import sunup.codec.Lined;
import sunup.codec.Problem;
import sunup.drugs.ApprovedDrug;
import sunup.drugs.PackageCheck;
import sunup.push.PushTerms;
import sunup.units.Unit;

/** Reads a site's file; every mistake is told with its line and how to mend it, all in one go. */
public final class SiteReader {
  /** Rooms of a suite. */
  public static final int MAX_ROOMS = 60;

  /** People of a morning, as the board takes them. */
  static final int MAX_PEOPLE = 600;

  static final int MAX_ROSTER = 12;
  static final int MAX_ROAMING = 200;
  static final int MAX_UNITS = 200;
  static final int MAX_PLACES = 40;
  static final int MAX_WORDS = 200;
  static final int WALL_NAME = 16;

  static final int MAX_PUSH_HOSTS = 20;

  private static final Pattern CONTACT = Pattern.compile("mailto:[^@\\s]+@[^@\\s]+|https://\\S+");
  private static final Pattern HOST = Pattern.compile("[A-Za-z0-9.-]*[A-Za-z][A-Za-z0-9-]*");
  private static final Pattern TIME = Pattern.compile("([01]\\d|2[0-3]):[0-5]\\d");
  private static final Map<String, Role> ROLES = words(Role.values(), Role::word);
  private static final Map<String, Step> STEPS =
      Map.of("wheels-in", Step.WHEELS_IN, "induction", Step.INDUCTION, "incision", Step.INCISION);

  private static final Map<String, HouseStyle.English> ENGLISH =
      Map.of("british", HouseStyle.English.BRITISH, "american", HouseStyle.English.AMERICAN);

  private final List<Problem> problems;
  private final Set<RoomId> rooms = new HashSet<>();

  private SiteReader(List<Problem> problems) {
    this.problems = problems;
  }

  private static <T> Map<String, T> words(T[] values, Function<T, String> word) {
    return Arrays.stream(values)
        .collect(Collectors.toMap(word, v -> v, (a, b) -> a, LinkedHashMap::new));
  }

  /**
   * @param site null if there are problems
   */
  public record Result(SiteFile site, List<Problem> problems) {
    public Result {
      problems = List.copyOf(problems);
    }
  }

  /** Reads the text of one file. */
  public static Result read(String file, String text) {
    List<Problem> problems = new ArrayList<>();
    Lined root = Lined.parse(file, text, problems);
    SiteFile site = root == null ? null : new SiteReader(problems).site(file, root);
    return new Result(problems.isEmpty() ? site : null, problems);
  }

  private SiteFile site(String file, Lined root) {
    Fields f = new Fields(root, "", problems);
    if (root.kind() != Lined.Kind.OBJECT) {
      return null;
    }
    f.get("note");
    SuiteId suite = id(f, "suite", SuiteId::new);
    SiteSettings settings = settings(f);
    LocalTime begins = time(f, "setUpBegins");
    List<SiteFile.Post> roster = roster(f, "roster");
    List<SiteFile.Room> rooms = rooms(f, roster);
    List<SiteFile.Roaming> roaming = roaming(f);
    List<UnitPlan> units = units(f);
    List<SiteFile.Place> places = places(f);
    Map<String, String> words = words(f);
    BedsideSettings bedside = BedsideReader.read(f, settings == null ? null : settings.style());
    boolean learns = f.get("learnDurations") == null || f.flag("learnDurations");
    PushTerms push = push(f);
    f.done();
    int people = roaming.size() + rooms.stream().mapToInt(r -> r.people().size() + 1).sum();
    if (people > MAX_PEOPLE) {
      f.problem("roster", "plans " + people + " people; a morning has at most " + MAX_PEOPLE);
    }
    if (!problems.isEmpty()) {
      return null;
    }
    return new SiteFile(
        file, suite, settings, begins, rooms, roaming, units, places, words, bedside, learns, push);
  }

  /** Off unless the file says who answers for it: it goes through servers of others. */
  private static PushTerms push(Fields site) {
    Fields f = site.object("push");
    if (f == null) {
      return null;
    }
    f.get("note");
    String contact = f.text("contact", 200);
    if (contact != null && !CONTACT.matcher(contact).matches()) {
      f.problem(
          "contact",
          "must be an address for questions: mailto:somebody@hospital.example or https:");
    }
    List<String> hosts = f.texts("hosts", MAX_PUSH_HOSTS);
    for (String host : hosts) {
      if (!HOST.matcher(host).matches()) {
        f.problem("hosts", "'" + LocalTimes.shortened(host) + "' is no host name; write only that");
      }
    }
    f.done();
    return contact == null ? null : new PushTerms(contact, hosts);
  }

  private SiteSettings settings(Fields f) {
    String hospital = f.text("hospital", 40);
    String suiteName = f.text("suiteName", 40);
    String zone = f.text("zone", 60);
    if (zone != null && !ZoneId.getAvailableZoneIds().contains(zone)) {
      String wrong = zone;
      f.problem(
          "zone",
          "'"
              + wrong
              + "' is no time zone; write an IANA name such as Europe/Lisbon or America/Chicago");
      zone = null;
    }
    Step start = f.oneOf("startEvent", STEPS);
    if (f.get("startEvent") == null) {
      f.problem("startEvent", "is missing; write wheels-in, induction or incision");
    }
    Integer grace = f.whole("graceMinutes", 0, 30);
    Double share = f.number("personShare", 0, 0.95);
    boolean demo = f.flag("demo");
    HouseStyle style = style(f);
    List<ApprovedDrug> drugs = DrugReader.drugs(f);
    List<PackageCheck.Recall> calledBack = DrugReader.calledBack(f);
    if (hospital == null || suiteName == null || zone == null || start == null) {
      return null;
    }
    return new SiteSettings(
        hospital,
        suiteName,
        zone,
        start,
        grace == null ? 0 : grace,
        share == null ? 0.2 : share,
        demo,
        drugs,
        calledBack,
        style);
  }

  private static HouseStyle style(Fields f) {
    HouseStyle.English english = f.oneOf("english", ENGLISH);
    Unit pressure = f.oneOf("pressure", BedsideReader.PRESSURES);
    Integer clock = f.whole("clock", 12, 24);
    if (clock != null && !HouseStyle.CLOCKS.contains(clock)) {
      f.problem("clock", "must be 24 or 12, the hours of the clock, not " + clock);
      clock = null;
    }
    return new HouseStyle(
        english == null ? HouseStyle.FIRST.english() : english,
        pressure == null ? null : pressure.word(),
        clock == null ? HouseStyle.FIRST.clock() : clock);
  }

  private List<SiteFile.Post> roster(Fields f, String name) {
    List<SiteFile.Post> posts = new ArrayList<>();
    for (Lined entry : f.list(name, MAX_ROSTER)) {
      Fields p = f.entry(name, entry);
      Role role = role(p);
      Integer before = p.whole("minutesBefore", 0, 600);
      if (before == null && p.get("minutesBefore") == null) {
        p.problem("minutesBefore", "is missing; write how many minutes before the target");
      }
      p.done();
      if (role != null && before != null) {
        posts.add(new SiteFile.Post(role, before));
      }
    }
    return posts;
  }

  private static Role role(Fields f) {
    Role role = f.oneOf("role", ROLES);
    if (f.get("role") == null) {
      f.problem("role", "is missing; use " + String.join(", ", ROLES.keySet()));
    }
    return role;
  }

  private List<SiteFile.Room> rooms(Fields f, List<SiteFile.Post> roster) {
    List<SiteFile.Room> read = new ArrayList<>();
    Map<RoomId, Lined> seen = new HashMap<>();
    for (Lined entry : f.list("rooms", MAX_ROOMS)) {
      Fields r = f.entry("rooms", entry);
      RoomId id = id(r, "id", RoomId::new);
      List<SiteFile.Post> people = r.get("roster") == null ? roster : roster(r, "roster");
      List<String> options = r.texts("options", 12);
      r.get("note");
      r.done();
      if (id != null) {
        twice(r, "id", seen.putIfAbsent(id, entry));
        rooms.add(id);
        read.add(new SiteFile.Room(id, people, options));
      }
    }
    if (read.isEmpty() && problems.isEmpty()) {
      f.problem("rooms", "is missing; name the rooms in the order of the wall");
    }
    return read;
  }

  private List<SiteFile.Roaming> roaming(Fields f) {
    List<SiteFile.Roaming> read = new ArrayList<>();
    Map<PersonId, Lined> seen = new HashMap<>();
    for (Lined entry : f.list("roaming", MAX_ROAMING)) {
      Fields p = f.entry("roaming", entry);
      PersonId id = id(p, "id", PersonId::new);
      Role role = role(p);
      LocalTime at = time(p, "at");
      List<RoomId> covers = new ArrayList<>();
      for (String text : p.texts("covers", MAX_ROOMS)) {
        RoomId room = rooms.stream().filter(r -> r.value().equals(text)).findFirst().orElse(null);
        if (room == null) {
          p.problem(
              "covers", "room " + Fields.unknown(text, rooms.stream().map(RoomId::value).toList()));
        } else {
          covers.add(room);
        }
      }
      p.get("note");
      p.done();
      if (id != null) {
        twice(p, "id", seen.putIfAbsent(id, entry));
        read.add(new SiteFile.Roaming(id, role, covers, at));
      }
    }
    return read;
  }

  private List<UnitPlan> units(Fields f) {
    List<UnitPlan> read = new ArrayList<>();
    Map<UnitId, Lined> seen = new HashMap<>();
    for (Lined entry : f.list("units", MAX_UNITS)) {
      Fields u = f.entry("units", entry);
      UnitId id = id(u, "id", UnitId::new);
      String kind = u.text("kind", 30);
      String wall = u.text("wall", WALL_NAME);
      u.get("note");
      u.done();
      if (id != null) {
        twice(u, "id", seen.putIfAbsent(id, entry));
        read.add(new UnitPlan(id, kind, wall));
      }
    }
    return read;
  }

  private List<SiteFile.Place> places(Fields f) {
    List<SiteFile.Place> read = new ArrayList<>();
    Map<PlaceId, Lined> seen = new HashMap<>();
    for (Lined entry : f.list("places", MAX_PLACES)) {
      Fields p = f.entry("places", entry);
      PlaceId id = id(p, "id", PlaceId::new);
      String wall = p.text("wall", WALL_NAME);
      LocalTime opens = time(p, "opens");
      Double walk = p.number("walkMinutes", 0, 60);
      p.get("note");
      p.done();
      if (id != null) {
        twice(p, "id", seen.putIfAbsent(id, entry));
        read.add(new SiteFile.Place(id, wall, opens, walk == null ? 0 : walk));
      }
    }
    return read;
  }

  /** The site's words, lower case, without spaces: a list's cell is split at them. */
  private Map<String, String> words(Fields f) {
    Map<String, String> read = new LinkedHashMap<>();
    Lined words = f.get("words");
    if (words == null) {
      return read;
    }
    if (words.kind() != Lined.Kind.OBJECT || words.fields().size() > MAX_WORDS) {
      f.problem("words", "must be an object of at most " + MAX_WORDS + " words and their meaning");
      return read;
    }
    words
        .fields()
        .forEach(
            (word, meaning) -> {
              if (meaning.kind() != Lined.Kind.TEXT) {
                problems.add(
                    new Problem(
                        meaning.file(),
                        meaning.line(),
                        "words: " + word,
                        "must be the technique or option that it means, in quotes"));
              } else {
                read.put(word.strip().toLowerCase(Locale.ROOT), meaning.text().strip());
              }
            });
    return read;
  }

  private static void twice(Fields f, String name, Lined first) {
    if (first != null) {
      f.problem(name, "is there already, in line " + first.line() + "; give it another");
    }
  }

  private static <T> T id(Fields f, String name, Function<String, T> make) {
    String text = f.text(name, 40);
    if (text == null) {
      return null;
    }
    try {
      return make.apply(text);
    } catch (IllegalArgumentException e) {
      f.problem(name, "'" + LocalTimes.shortened(text) + "': " + e.getMessage());
      return null;
    }
  }

  private static LocalTime time(Fields f, String name) {
    String text = f.text(name, 20);
    if (text == null) {
      return null;
    }
    try {
      if (TIME.matcher(text).matches()) {
        return LocalTime.parse(text);
      }
    } catch (DateTimeException e) {
      // Told below.
    }
    f.problem(name, "'" + LocalTimes.shortened(text) + "' is not a time, write it like 06:30");
    return null;
  }
}
