package sunup.ops.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import sunup.board.CasePlan;
import sunup.board.Command;
import sunup.board.ItemRef;
import sunup.board.MorningPlan;
import sunup.board.PersonId;
import sunup.board.RoomId;
import sunup.board.RoomUse;
import sunup.codec.Json;
import sunup.sheets.SheetItem;

class ScriptTest {
  private static final long MINUTE = 60_000;
  private static final int SEEDS = 40;
  private final MorningPlan plan = SmallHospital.plan();
  private final Map<String, SheetItem> sheet = plan.sheets().get(0).byKey();
  private final long target = plan.cases().get(0).bookedAt();

  @Test
  void shouldPlayTheSameMorningWhenTheSeedIsTheSame() throws Exception {
    Script one = Script.write(plan, story(), 7);
    Script again = Script.write(plan, story(), 7);
    assertThat(Json.write(again.reports())).isEqualTo(Json.write(one.reports()));
    assertThat(again.facts()).isEqualTo(one.facts());
    Script other = Script.write(plan, story(), 8);
    assertThat(Json.write(other.reports())).isNotEqualTo(Json.write(one.reports()));
  }

  @Test
  void shouldBeginNothingBeforeWhatItNeedsIsGood() {
    seeds()
        .forEach(
            seed -> {
              Map<ItemRef, Long> done = new HashMap<>();
              for (Fact fact : Script.write(plan, Story.PLAIN, seed).facts()) {
                if (fact instanceof Fact.Done f) {
                  done.put(f.item(), f.at());
                } else if (fact instanceof Fact.Began f) {
                  for (String key : sheet.get(f.item().key()).after()) {
                    assertThat(done).containsKey(ref(f.room(), key));
                  }
                }
              }
              assertThat(done.keySet().stream().map(ItemRef::key)).contains("start.induction");
            });
  }

  @Test
  void shouldLetAPersonDoOneThingAtATime() {
    seeds()
        .forEach(
            seed -> {
              Map<PersonId, ItemRef> doing = new HashMap<>();
              Map<ItemRef, List<PersonId>> hands = new HashMap<>();
              for (Fact fact : Script.write(plan, Story.PLAIN, seed).facts()) {
                if (fact instanceof Fact.Began f && sheet.get(f.item().key()).waits() == null) {
                  for (PersonId person : f.hands()) {
                    assertThat(doing).doesNotContainKey(person);
                    doing.put(person, f.item());
                  }
                  hands.put(f.item(), f.hands());
                } else if (fact instanceof Fact.Done f) {
                  hands.getOrDefault(f.item(), List.of()).forEach(doing::remove);
                }
              }
            });
  }

  @Test
  void shouldKeepOneUltrasoundInOneRoomAtATime() {
    seeds()
        .forEach(
            seed -> {
              RoomId with = null;
              for (Fact fact : Script.write(plan, Story.PLAIN, seed).facts()) {
                if (fact instanceof Fact.Fetched f) {
                  assertThat(with).isNull();
                  with = f.room();
                } else if (fact instanceof Fact.Freed f) {
                  assertThat(with).isEqualTo(f.room());
                  with = null;
                }
              }
            });
  }

  @Test
  void shouldNotOpenThePharmacyNorStartBeforeTheirTimes() {
    seeds()
        .forEach(
            seed -> {
              for (Fact fact : Script.write(plan, Story.PLAIN, seed).facts()) {
                if (fact instanceof Fact.Began f && f.item().key().equals("drugs.controlled")) {
                  assertThat(f.at()).isGreaterThanOrEqualTo(target - 15 * MINUTE);
                }
                if (fact instanceof Fact.Done f && f.item().key().equals("start.induction")) {
                  assertThat(f.at()).isGreaterThanOrEqualTo(target);
                }
              }
            });
  }

  @Test
  void shouldHearTheSilentRoomOnceFifteenMinutesBeforeItsTarget() {
    RoomId silent = new RoomId("2");
    Story once =
        new Story(null, null, null, null, null, null, List.of(silent), null, null, null, null);
    seeds()
        .forEach(
            seed -> {
              List<Report> reports = Script.write(plan, once, seed).reports();
              List<Report> own =
                  reports.stream()
                      .filter(r -> r.screen().equals("station-2.rehearsal") && setUp(r.command()))
                      .toList();
              assertThat(own).isNotEmpty();
              assertThat(own)
                  .allSatisfy(
                      r ->
                          assertThat(r.at()).isBetween(target - 15 * MINUTE, target - 12 * MINUTE));
              assertThat(reports)
                  .noneMatch(
                      r ->
                          r.page().equals("station")
                              && r.screen().equals("station-2.rehearsal")
                              && r.at() < target - 15 * MINUTE);
            });
  }

  @Test
  void shouldMendAFaultBeforeTheItemIsTriedAgain() {
    Script script = Script.write(plan, story(), 3);
    List<Fact> leak =
        script.facts().stream().filter(f -> tells(f, "room:1/machine.self-test")).toList();
    assertThat(leak.stream().map(f -> f.getClass().getSimpleName()))
        .containsExactly("Began", "Broke", "Taken", "Mended", "Began", "Done");
  }

  @Test
  void shouldDoNothingInARoomBeforeItsNightCaseIsOutAndCleaned() {
    Script script = Script.write(plan, story(), 5);
    long clean = Story.at(plan, "06:50") + 15 * MINUTE;
    List<Fact.Began> inRoom =
        script.facts().stream()
            .filter(f -> f instanceof Fact.Began)
            .map(f -> (Fact.Began) f)
            .filter(f -> f.room().value().equals("3"))
            .filter(f -> Theatre.inRoom(sheet.get(f.item().key())))
            .toList();
    assertThat(inRoom)
        .isNotEmpty()
        .allSatisfy(f -> assertThat(f.at()).isGreaterThanOrEqualTo(clean));
    assertThat(script.facts().stream().filter(f -> f instanceof Fact.Used))
        .extracting(f -> ((Fact.Used) f).use())
        .containsExactly(RoomUse.OCCUPIED, RoomUse.CLEANING, RoomUse.FREE);
  }

  @Test
  void shouldReportOnlyWhatTrulyHappenedAndNotBefore() {
    seeds()
        .forEach(
            seed -> {
              Script script = Script.write(plan, story(), seed);
              Map<ItemRef, Long> done = new HashMap<>();
              for (Fact fact : script.facts()) {
                if (fact instanceof Fact.Done f) {
                  done.put(f.item(), f.at());
                }
              }
              for (Report r : script.reports()) {
                if (r.command() instanceof Command.Good good) {
                  assertThat(done.get(good.item())).isNotNull().isLessThanOrEqualTo(r.at());
                } else if (r.command() instanceof Command.Sweep sweep) {
                  for (SheetItem item : sheet.values()) {
                    ItemRef ref = ref(sweep.room(), item.key());
                    if (item.section() == sweep.section() && !sweep.except().contains(ref)) {
                      assertThat(done.get(ref)).isNotNull().isLessThanOrEqualTo(r.at());
                    }
                  }
                }
              }
            });
  }

  @Test
  void shouldGiveEveryReportAnIdOfItsOwnThatLastsOverRuns() {
    Script script = Script.write(plan, story(), 11);
    List<String> ids = new java.util.ArrayList<>();
    for (int i = 0; i < script.reports().size(); i++) {
      ids.add(Report.id(script.reports().get(i).at(), script.seed(), i).value());
    }
    assertThat(ids).doesNotHaveDuplicates();
    assertThat(ids)
        .allMatch(id -> java.util.UUID.fromString(id).version() == 7)
        .allMatch(id -> java.util.UUID.fromString(id).variant() == 2);
  }

  @Test
  void shouldSayWhatDoesNotFitWhenAStoryIsForAnotherHospital() {
    Story other =
        new Story(
            null,
            List.of(new Story.Broken(new RoomId("9"), "machine.self-test", "leak", 9)),
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null);
    assertThatThrownBy(() -> Script.write(plan, other, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("room 9");
  }

  private Story story() {
    return new Story(
        List.of(new Story.Comes(new PersonId("A2"), 9)),
        List.of(new Story.Broken(new RoomId("1"), "machine.self-test", "leak 400 mL/min", 8)),
        List.of(new Story.Night(new RoomId("3"), "06:40", "06:50", 15)),
        List.of(new Story.Arrives(new RoomId("2"), "patient.arrived", "06:55", "06:40", null)),
        List.of(new Story.Agreed(new RoomId("3"), "07:45", "06:58")),
        List.of(),
        List.of(),
        null,
        null,
        null,
        null);
  }

  private static boolean setUp(Command command) {
    if (command instanceof Command.Good good) {
      return !good.item().key().startsWith("start.");
    }
    return command instanceof Command.Sweep || command instanceof Command.ReportReady;
  }

  private static boolean tells(Fact fact, String ref) {
    return Json.write(fact).contains("\"" + ref + "\"");
  }

  private ItemRef ref(RoomId room, String key) {
    CasePlan c = plan.cases().stream().filter(p -> p.room().equals(room)).findFirst().orElseThrow();
    return sheet.get(key).belongs() == SheetItem.Belongs.ROOM
        ? ItemRef.of(room, key)
        : ItemRef.of(c.id(), key);
  }

  private static LongStream seeds() {
    return LongStream.range(0, SEEDS);
  }
}
