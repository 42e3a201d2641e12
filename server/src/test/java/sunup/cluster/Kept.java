package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import sunup.board.CommandId;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.codec.Json;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;
import sunup.journal.Journal;
import sunup.journal.JournalCheck;
import sunup.journal.PostgresAddress;
import sunup.journal.PostgresJournal;
import sunup.journal.Receipt;
import sunup.journal.Stored;
import sunup.journal.Waiting;
import sunup.live.OutlookSight;
import sunup.live.fake.ManualClock;
import sunup.outlook.Foretold;
import sunup.suites.Decider;
import sunup.suites.Standpoint;
import sunup.suites.Suites;
import sunup.wire.Audience;
import sunup.wire.Part;

/** Looks into the journal for what clients were told. */
final class Kept {
  private static final long LIMIT_S = 60;
  private static final Decider BOARD = Decider.board();

  private Kept() {}

  /** Every acknowledged command is there once, and the journal is whole. */
  static void check(PostgresAddress database, List<CommandId> acknowledged) throws Exception {
    try (Journal journal = PostgresJournal.open(database)) {
      Found found = find(journal);
      assertThat(found.problems()).isEmpty();
      assertThat(acknowledged).allMatch(id -> found.times(id) == 1);
    }
  }

  static Found find(PostgresAddress database) throws Exception {
    try (Suites suites = Suites.open(PostgresJournal.open(database), BOARD, new ManualClock());
        Journal journal = PostgresJournal.open(database)) {
      Found found = find(journal);
      CompletableFuture<Standpoint> replayed = new CompletableFuture<>();
      suites.look(found.morning(), at -> replayed.complete(at.orElse(null)));
      return found.replayed(replayed.get(LIMIT_S, TimeUnit.SECONDS).state());
    }
  }

  static Found find(Journal journal) throws Exception {
    List<MorningId> all = Waiting.known(Waiting.answer(journal::mornings));
    assertThat(all).hasSize(1);
    Stored stored = Waiting.known(Waiting.answer(t -> journal.load(all.get(0), t)));
    Map<CommandId, Integer> effects = new HashMap<>();
    for (Stored.Event event : stored.events()) {
      String command = Json.mapper().readTree(event.bytes().raw()).path("command").asText();
      effects.merge(new CommandId(command), 1, Integer::sum);
    }
    Map<CommandId, Integer> times = new HashMap<>();
    for (Receipt receipt : stored.receipts()) {
      if (receipt.refusal() == null) {
        times.merge(receipt.command(), effects.getOrDefault(receipt.command(), 0), Integer::sum);
      }
    }
    return new Found(all.get(0), JournalCheck.check(stored).problems(), times, null);
  }

  /**
   * What is there.
   *
   * @param times how many events each command has that was carried out; the clients' make one each
   * @param state what replaying it gives
   */
  record Found(
      MorningId morning, List<String> problems, Map<CommandId, Integer> times, Morning state) {
    int times(CommandId id) {
      return times.getOrDefault(id, 0);
    }

    private Found replayed(Morning replayed) {
      return new Found(morning, problems, times, replayed);
    }

    /** What a screen shows that the replay does not, or the other way round, in words. */
    List<String> compare(String screen, String page, Map<String, Part> parts) throws IOException {
      SiteFile site = SiteReader.read("site.json", SiteFile.standardText()).site();
      OutlookSight sight = new OutlookSight(site.settings(), 1);
      Audience audience =
          switch (page) {
            case "wall" -> Audience.WALL;
            case "desk" -> Audience.DESK;
            default -> Audience.STAFF;
          };
      Map<String, Part> replayed = new HashMap<>();
      for (Part part : sight.see(morning, null, state, Foretold.NONE, ManualClock.START).parts()) {
        if (part.audience().compareTo(audience) <= 0) {
          replayed.put(part.key(), part);
        }
      }
      List<String> wrong = new ArrayList<>();
      replayed.forEach((key, part) -> differ(screen, part, parts.get(key), wrong));
      parts.forEach(
          (key, part) -> {
            if (!replayed.containsKey(key)) {
              differ(screen, part, null, wrong);
            }
          });
      return wrong;
    }

    /** Only what the journal alone decides: figures and what is looked for move with time. */
    private static void differ(String screen, Part one, Part other, List<String> wrong) {
      boolean journals =
          one instanceof Part.NotePart
              || one instanceof Part.CasePart
              || one instanceof Part.PersonPart
              || one instanceof Part.UnitPart
              || one instanceof Part.PlacePart
              || one instanceof Part.MovePart;
      if (journals && !one.equals(other)) {
        wrong.add(screen + " is not what the replay gives: " + one + " and " + other);
      }
    }
  }
}
