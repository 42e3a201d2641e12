package sunup.intake;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sunup.board.CaseId;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.Morning;
import sunup.board.Morning.CaseDay;
import sunup.board.RoomId;
import sunup.codec.Json;
import sunup.codec.Problem;

/**
 * Takes a case list against a morning as it stands: first a preview, then the commands that bring
 * the morning there. Pure: equal list, site and morning give equal preview, hash and commands.
 */
public final class Intake {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  private final SiteFile site;
  private final LocalDate date;
  private final Morning now;
  private final Map<CaseId, CaseDay> current = new LinkedHashMap<>();
  private final List<Problem> problems = new ArrayList<>();
  private final List<Preview.Row> added = new ArrayList<>();
  private final List<Preview.Row> changed = new ArrayList<>();
  private final List<Preview.Row> removed = new ArrayList<>();
  private final Map<CaseId, Command.AddCase> adds = new LinkedHashMap<>();
  private final Map<CaseId, Command.ChangeCase> changes = new LinkedHashMap<>();
  private Planner.Planned planned;

  private Intake(SiteFile site, LocalDate date, Morning now) {
    this.site = site;
    this.date = date;
    this.now = now;
    for (CaseDay one : now.cases().values()) {
      if (!one.cancelled()) {
        current.put(one.plan().id(), one);
      }
    }
  }

  /**
   * A preview with what would carry it out.
   *
   * @param commands in the order in which they must be given, each having seen what the one before
   *     did; empty if there are problems or nothing would change. A draft is planned anew by one
   *     {@link Command.Plan}; an open morning is brought there case by case
   */
  public record Taken(Preview preview, List<Command> commands) {
    public Taken {
      commands = List.copyOf(commands);
    }
  }

  /**
   * Compares a list with a morning.
   *
   * @param now the morning as it stands; {@link Morning#NONE} if there is none yet
   * @param at the moment, epoch milliseconds; what is booked before it is noted
   */
  public static Taken compare(
      CaseListResult list, SiteFile site, LocalDate date, Morning now, long at) {
    return new Intake(site, date, now).compare(list, at);
  }

  private Taken compare(CaseListResult list, long at) {
    problems.addAll(list.problems());
    if (!list.problems().isEmpty()) {
      return new Taken(
          new Preview(hash(), List.of(), List.of(), List.of(), 0, problems, list.notes()),
          List.of());
    }
    if (now.phase() == Morning.Phase.CLOSED) {
      problem(0, "", "the morning is closed and takes no list; plan another date");
    }
    Map<RoomId, CaseId> inRoom = new HashMap<>();
    current.forEach((id, one) -> inRoom.put(one.plan().room(), id));
    Map<ListedCase, CaseId> ids = Planner.identify(list.cases(), inRoom);
    avoidCancelled(ids);
    planned = Planner.plan(site, ids, list.cases(), date);
    problems.addAll(planned.problems());
    List<Problem> notes = new ArrayList<>(list.notes());
    int unchanged = 0;
    for (ListedCase one : list.cases()) {
      unchanged += listed(one, ids.get(one), notes) ? 1 : 0;
    }
    notePast(list, at, notes);
    Set<CaseId> named = new TreeSet<>(ids.values());
    for (CaseDay one : current.values()) {
      if (!named.contains(one.plan().id())) {
        unlisted(one, list);
      }
    }
    Preview preview = new Preview(hash(), added, changed, removed, unchanged, problems, notes);
    return new Taken(preview, preview.canBeTaken() ? commands() : List.of());
  }

  /** A cancelled case stays cancelled: the same id can't come again, another is made or asked. */
  private void avoidCancelled(Map<ListedCase, CaseId> ids) {
    for (Map.Entry<ListedCase, CaseId> entry : ids.entrySet()) {
      CaseId id = entry.getValue();
      CaseDay there = now.cases().get(id);
      if (now.phase() != Morning.Phase.OPEN || there == null || !there.cancelled()) {
        continue;
      }
      if (entry.getKey().id() != null) {
        problem(
            entry.getKey().line(),
            "case",
            "'" + id + "' was cancelled this morning; give it a new id to put it on again");
        continue;
      }
      int n = 2;
      CaseId free = id;
      while (now.cases().containsKey(free) || ids.containsValue(free)) {
        free = new CaseId(id.value() + "-" + n++);
      }
      entry.setValue(free);
    }
  }

  /** True if the case stays as it is. */
  private boolean listed(ListedCase one, CaseId id, List<Problem> notes) {
    CasePlan plan = Planner.casePlan(id, one);
    CaseDay there = current.get(id);
    if (there == null) {
      added.add(row(plan, List.of()));
      adds.put(id, new Command.AddCase(plan, one.sheet()));
      noteStranger(one, plan, notes);
      return false;
    }
    List<String> different = differences(there.plan(), plan);
    if (different.isEmpty()) {
      return true;
    }
    changed.add(row(plan, different));
    changes.put(id, new Command.ChangeCase(plan, one.sheet()));
    started(there, one.line(), "would be changed (" + String.join("; ", different) + ")");
    noteStranger(one, plan, notes);
    return false;
  }

  /** A case that the list does not name is cancelled, unless rows were left out. */
  private void unlisted(CaseDay one, CaseListResult list) {
    if (!list.partial()) {
      removed.add(row(one.plan(), List.of()));
      started(one, 0, "would be cancelled");
      return;
    }
    for (ListedCase other : list.cases()) {
      if (other.room().equals(one.plan().room())) {
        problem(
            other.line(),
            "room",
            "room "
                + other.room()
                + " still has case '"
                + one.plan().id()
                + "', which no right row of the list moves or drops; mend the whole list");
      }
    }
  }

  /** An open morning's people are told at the desk; a list brings none. */
  private void noteStranger(ListedCase one, CasePlan plan, List<Problem> notes) {
    if (now.phase() == Morning.Phase.OPEN && !now.people().containsKey(plan.surgeon())) {
      notes.add(
          new Problem(
              Planner.LIST,
              one.line(),
              "surgeon",
              "'"
                  + plan.surgeon()
                  + "' is not among this morning's people; the board can't tell"
                  + " when he or she comes"));
    }
  }

  /** Taken all the same: it may be a list that comes late. It may also be yesterday's. */
  private void notePast(CaseListResult list, long at, List<Problem> notes) {
    List<ListedCase> past = list.cases().stream().filter(one -> one.bookedAt() < at).toList();
    if (past.isEmpty()) {
      return;
    }
    notes.add(
        new Problem(
            Planner.LIST,
            past.get(0).line(),
            "start",
            past(past.size(), list.cases().size()) + "; look whether the list is for " + date));
  }

  private static String past(int past, int all) {
    if (all == 1) {
      return "the only case is booked at a time that is past";
    }
    return past
        + " of "
        + all
        + (past == 1
            ? " cases is booked at a time that is past"
            : " cases are booked at times that are past");
  }

  /** Nobody's case is changed by a list once it has begun. */
  private void started(CaseDay there, int line, String what) {
    if (now.phase() == Morning.Phase.OPEN && !there.steps().isEmpty()) {
      problem(
          line,
          "case",
          "'"
              + there.plan().id()
              + "' in room "
              + there.plan().room()
              + " has begun (patient sent for or later) and "
              + what
              + "; do that at the desk if it is meant");
    }
  }

  private List<String> differences(CasePlan old, CasePlan plan) {
    List<String> all = new ArrayList<>();
    differ(all, "room", old.room(), plan.room());
    if (old.bookedAt() != plan.bookedAt()) {
      differ(all, "start", clock(old.bookedAt()), clock(plan.bookedAt()));
    }
    differ(all, "technique", old.technique(), plan.technique());
    if (!Set.copyOf(old.options()).equals(Set.copyOf(plan.options()))) {
      differ(all, "options", words(old.options()), words(plan.options()));
    }
    if (!Objects.equals(old.procedure(), plan.procedure())) {
      all.add("procedure");
    }
    differ(all, "service", old.service(), plan.service());
    differ(all, "surgeon", old.surgeon(), plan.surgeon());
    if (all.isEmpty() && !Objects.equals(old.sheet(), plan.sheet())) {
      all.add("sheet has another edition");
    }
    return all;
  }

  private static void differ(List<String> all, String what, Object old, Object other) {
    if (!Objects.equals(old, other)) {
      all.add(
          what + " " + (old == null ? "none" : old) + ", now " + (other == null ? "none" : other));
    }
  }

  private static String words(List<String> options) {
    return options.isEmpty() ? "none" : options.stream().sorted().collect(Collectors.joining("+"));
  }

  private Preview.Row row(CasePlan plan, List<String> different) {
    return new Preview.Row(
        plan.id(),
        plan.room(),
        clock(plan.bookedAt()),
        plan.technique(),
        plan.options(),
        different);
  }

  private String clock(long at) {
    ZoneId zone = site.settings().zoneId();
    return CLOCK.format(Instant.ofEpochMilli(at).atZone(zone));
  }

  private List<Command> commands() {
    if (now.phase() != Morning.Phase.OPEN) {
      return List.of(new Command.Plan(planned.plan()));
    }
    List<Command> commands = new ArrayList<>();
    Set<CaseId> gone = new TreeSet<>();
    for (Preview.Row row : removed) {
      commands.add(new Command.CancelCase(row.caseId(), null));
      gone.add(row.caseId());
    }
    List<CasePlan> stay =
        current.values().stream()
            .map(CaseDay::plan)
            .filter(plan -> !gone.contains(plan.id()))
            .toList();
    commands.addAll(Moves.commands(stay, changes));
    commands.addAll(adds.values());
    return commands;
  }

  private String hash() {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(
          (site.suite() + "/" + date + "/" + now.phase()).getBytes(StandardCharsets.UTF_8));
      List<CasePlan> before = current.values().stream().map(CaseDay::plan).toList();
      digest.update(Json.bytes(before));
      digest.update(Json.bytes(List.of(added, changed, removed)));
      digest.update(Json.bytes(adds.values().stream().map(Command.AddCase::plan).toList()));
      digest.update(Json.bytes(changes.values().stream().map(Command.ChangeCase::plan).toList()));
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private void problem(int line, String field, String message) {
    problems.add(new Problem(Planner.LIST, line, field, message));
  }
}
