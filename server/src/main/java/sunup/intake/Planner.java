package sunup.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sunup.board.CaseId;
import sunup.board.CasePlan;
import sunup.board.MorningId;
import sunup.board.MorningPlan;
import sunup.board.PersonId;
import sunup.board.PersonPlan;
import sunup.board.PlacePlan;
import sunup.board.Private;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.codec.Fields;
import sunup.codec.Problem;
import sunup.drugs.ApprovedDrug;
import sunup.sheets.BadSheet;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;
import sunup.sheets.Sheets;
import sunup.sheets.Uses;

/** Makes a morning's plan of the site's file and the day's first cases. Pure. */
public final class Planner {
  static final String LIST = "case list";

  private static final long MINUTE = 60_000;

  /** When a surgeon is planned who is in no roster: minutes before the target. */
  private static final int SURGEON_BEFORE = 30;

  private Planner() {}

  /**
   * @param plan null if there are problems
   * @param problems what the cases need that the site does not have, by their line in the list
   */
  public record Planned(MorningPlan plan, List<Problem> problems) {
    public Planned {
      problems = List.copyOf(problems);
    }
  }

  /** Plans the morning of this date. Every room's own people are planned, with or without case. */
  public static Planned plan(SiteFile site, List<ListedCase> cases, LocalDate date) {
    return plan(site, identify(cases, Map.of()), cases, date);
  }

  /**
   * Checks a site's file against its sheets: options of rooms, words of its own.
   *
   * @return what is wrong, empty if all is well
   */
  public static List<Problem> check(SiteFile site, Sheets sheets) {
    List<Problem> problems = new ArrayList<>();
    List<String> options = sheets.options().stream().map(Sheets.Choice::name).toList();
    Set<String> all = new LinkedHashSet<>(options);
    sheets.techniques().forEach(t -> all.add(t.name()));
    for (SiteFile.Room room : site.rooms()) {
      for (String option : room.options()) {
        if (!options.contains(option)) {
          problems.add(
              new Problem(
                  site.file(),
                  0,
                  "rooms: " + room.id() + ": options",
                  Fields.unknown(option, options)));
        }
      }
      if (options.containsAll(room.options())) {
        try {
          sheets.compose(sheets.techniques().get(0).name(), room.options());
        } catch (BadSheet e) {
          problems.addAll(e.problems());
        }
      }
    }
    for (ApprovedDrug drug : site.settings().drugs()) {
      for (String of : drug.cases()) {
        if (!all.contains(of)) {
          problems.add(
              new Problem(
                  site.file(), 0, "drugs: " + drug.name() + ": cases", Fields.unknown(of, all)));
        }
      }
    }
    site.words()
        .forEach(
            (word, meaning) -> {
              if (!all.contains(meaning)) {
                problems.add(
                    new Problem(site.file(), 0, "words: " + word, Fields.unknown(meaning, all)));
              }
            });
    return problems;
  }

  static Planned plan(
      SiteFile site, Map<ListedCase, CaseId> ids, List<ListedCase> cases, LocalDate date) {
    List<PersonPlan> people = people(site, cases, date);
    List<Problem> problems = new ArrayList<>();
    Map<String, ComposedSheet> sheets = new TreeMap<>();
    List<CasePlan> plans = new ArrayList<>();
    for (ListedCase one : cases) {
      sheets.put(one.sheet().hash(), one.sheet());
      plans.add(casePlan(ids.get(one), one));
      check(site, people, one, problems);
    }
    if (!problems.isEmpty()) {
      return new Planned(null, problems);
    }
    var zone = site.settings().zoneId();
    List<PlacePlan> places =
        site.places().stream()
            .map(
                p ->
                    new PlacePlan(
                        p.id(),
                        p.wall(),
                        LocalTimes.planned(date, p.opens(), zone),
                        p.walkMinutes()))
            .toList();
    MorningPlan plan =
        new MorningPlan(
            new MorningId(site.suite(), date),
            site.settings(),
            site.rooms().stream().map(SiteFile.Room::id).toList(),
            plans,
            people,
            site.units(),
            places,
            List.copyOf(sheets.values()),
            LocalTimes.planned(date, site.setUpBegins(), zone));
    return new Planned(plan, List.of());
  }

  static CasePlan casePlan(CaseId id, ListedCase one) {
    return new CasePlan(
        id,
        one.room(),
        one.bookedAt(),
        Private.of(one.procedure()),
        one.service(),
        one.technique(),
        one.options(),
        surgeon(one),
        one.sheet().hash());
  }

  /**
   * Gives every case an id: the list's own, or that of the case that is in its room now, or one
   * made of the room.
   *
   * @param now ids of the cases by room, and never to be given to another
   */
  static Map<ListedCase, CaseId> identify(List<ListedCase> cases, Map<RoomId, CaseId> now) {
    Set<CaseId> used = new HashSet<>();
    cases.stream().filter(c -> c.id() != null).forEach(c -> used.add(c.id()));
    Map<ListedCase, CaseId> ids = new LinkedHashMap<>();
    for (ListedCase one : cases) {
      CaseId id = one.id();
      if (id == null) {
        CaseId there = now.get(one.room());
        id = there != null && !used.contains(there) ? there : made(one.room(), used, now);
      }
      used.add(id);
      ids.put(one, id);
    }
    return ids;
  }

  private static CaseId made(RoomId room, Set<CaseId> used, Map<RoomId, CaseId> now) {
    String stem = "c" + room.value();
    stem = stem.length() > 36 ? stem.substring(0, 36) : stem;
    CaseId id = new CaseId(stem);
    for (int n = 2; used.contains(id) || now.containsValue(id); n++) {
      id = new CaseId(stem + "-" + n);
    }
    return id;
  }

  private static PersonId surgeon(ListedCase one) {
    return one.surgeon() != null ? one.surgeon() : own(Role.SURGEON, one.room(), 1);
  }

  private static int surgeonBefore(SiteFile.Room room) {
    return room.people().stream()
        .filter(p -> p.role() == Role.SURGEON)
        .mapToInt(SiteFile.Post::minutesBefore)
        .findFirst()
        .orElse(SURGEON_BEFORE);
  }

  private static PersonId own(Role role, RoomId room, int n) {
    String tail = n == 1 ? "" : "-" + n;
    String stem = role.word() + "-" + room;
    return new PersonId((stem.length() > 37 ? stem.substring(0, 37) : stem) + tail);
  }

  private static List<PersonPlan> people(SiteFile site, List<ListedCase> cases, LocalDate date) {
    var zone = site.settings().zoneId();
    Map<RoomId, ListedCase> byRoom =
        cases.stream().collect(Collectors.toMap(ListedCase::room, c -> c));
    long earliest =
        cases.stream()
            .mapToLong(ListedCase::bookedAt)
            .min()
            .orElse(LocalTimes.planned(date, site.setUpBegins(), zone) + 60 * MINUTE);
    Map<PersonId, PersonPlan> people = new LinkedHashMap<>();
    for (SiteFile.Room room : site.rooms()) {
      ListedCase first = byRoom.get(room.id());
      long target = first == null ? earliest : first.bookedAt();
      Map<Role, Integer> count = new TreeMap<>();
      for (SiteFile.Post post : room.people()) {
        if (post.role() != Role.SURGEON) {
          PersonId id = own(post.role(), room.id(), count.merge(post.role(), 1, Integer::sum));
          long at = target - post.minutesBefore() * MINUTE;
          people.put(id, new PersonPlan(id, post.role(), room.id(), List.of(), at));
        }
      }
      if (first != null) {
        PersonId id = surgeon(first);
        long at = target - surgeonBefore(room) * MINUTE;
        people.merge(
            id,
            new PersonPlan(id, Role.SURGEON, room.id(), List.of(), at),
            (one, other) -> inBoth(one, other));
      }
    }
    for (SiteFile.Roaming r : site.roaming()) {
      people.put(
          r.id(),
          new PersonPlan(
              r.id(), r.role(), null, r.covers(), LocalTimes.planned(date, r.at(), zone)));
    }
    return List.copyOf(people.values());
  }

  /** A surgeon with two first cases has no own room but serves both. */
  private static PersonPlan inBoth(PersonPlan one, PersonPlan other) {
    Set<RoomId> covers = new LinkedHashSet<>(one.covers());
    if (one.room() != null) {
      covers.add(one.room());
    }
    covers.add(other.room());
    return new PersonPlan(
        one.id(),
        one.role(),
        null,
        List.copyOf(covers),
        Math.min(one.plannedAt(), other.plannedAt()));
  }

  /** What a case needs that the site does not have. */
  private static void check(
      SiteFile site, List<PersonPlan> people, ListedCase one, List<Problem> problems) {
    Set<String> places =
        site.places().stream().map(p -> p.id().value()).collect(Collectors.toSet());
    Set<String> kinds = site.units().stream().map(u -> u.kind()).collect(Collectors.toSet());
    Set<String> said = new HashSet<>();
    if (people.stream().anyMatch(p -> p.id().equals(one.surgeon()) && p.role() != Role.SURGEON)) {
      problems.add(
          new Problem(
              LIST,
              one.line(),
              "surgeon",
              "'" + one.surgeon() + "' is another person in " + site.file() + "; use another"));
    }
    for (SheetItem item : one.sheet().items()) {
      if (item.place() != null && !places.contains(item.place())) {
        said.add("place " + item.place());
      }
      for (Uses use : item.uses()) {
        if (!kinds.contains(use.kind())) {
          said.add("equipment of kind " + use.kind());
        }
      }
      for (List<Role> roles : item.who()) {
        if (people.stream().noneMatch(p -> roles.contains(p.role()) && serves(p, one.room()))) {
          said.add("somebody as " + String.join(" or ", roles.stream().map(Role::word).toList()));
        }
      }
    }
    for (String missing : said.stream().sorted().toList()) {
      problems.add(
          new Problem(
              LIST,
              one.line(),
              "technique",
              "room "
                  + one.room()
                  + " would need "
                  + missing
                  + ", but "
                  + site.file()
                  + " has none for it; add it there or change technique or options"));
    }
  }

  static boolean serves(PersonPlan person, RoomId room) {
    return person.room() != null
        ? person.room().equals(room)
        : person.covers().isEmpty() || person.covers().contains(room);
  }
}
