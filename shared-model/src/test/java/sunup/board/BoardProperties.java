package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.Phase;
import sunup.board.Morning.RoomDay;
import sunup.codec.BadJson;
import sunup.codec.Json;
import sunup.drugs.ControlledEntry;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;

/** What holds for any orders whatever. */
class BoardProperties {
  private static final int TRIES = 100;
  private static final int ORDERS = 40;

  @Provide
  Arbitrary<List<Order>> orders() {
    return Orders.some(ORDERS);
  }

  private static Day play(Day day, List<Order> orders) {
    orders.forEach(day::order);
    return day;
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void replayOfTheJournalAsTextIsTheState(@ForAll("orders") List<Order> orders) throws BadJson {
    Day day = play(Day.openWithDrugs(), orders);

    Morning again = Morning.NONE;
    for (Recorded event : day.journal()) {
      Recorded read = Json.read(Json.write(event), Recorded.class);
      again = Board.apply(again, again.seq() + 1, read);
    }

    assertThat(Json.write(again)).isEqualTo(Json.write(day.morning()));
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void nothingThrowsInAnyPhaseAndNoEventInAnyState(@ForAll("orders") List<Order> orders) {
    play(new Day(), orders);
    play(Day.draft(), orders);
    play(Day.openWithDrugs(), orders);
    Day open = play(Day.open(), orders);
    List<Recorded> journal = open.journal();
    Morning strange = Morning.NONE;
    for (int i = journal.size() - 1; i >= 0; i--) {
      strange = Board.apply(strange, strange.seq() + 1, journal.get(i));
      strange.rooms().keySet().forEach(strange::itemsOf);
    }
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void countedDrugsAreAllAccountedForByTwoDifferentPeople(@ForAll("orders") List<Order> orders) {
    Day day = play(Day.openWithDrugs(), orders);
    day.morning()
        .drugs()
        .values()
        .forEach(
            drugs -> {
              drugs
                  .count()
                  .entries()
                  .forEach(
                      e -> {
                        assertThat(e.by()).isNotNull().isNotEqualTo(e.witness());
                        if (!(e instanceof ControlledEntry.Given)) {
                          assertThat(e.witness()).isNotNull();
                        }
                      });
              drugs.count().sums().forEach(sum -> assertThat(sum.open().signum()).isNotNegative());
            });
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void timesAreInOrderAndWithinTheMorning(@ForAll("orders") List<Order> orders) {
    Day day = play(Day.open(), orders);
    long last = 0;
    Long opened = null;
    for (Recorded event : day.journal()) {
      assertThat(event.recordedAt()).isGreaterThanOrEqualTo(last);
      assertThat(event.happenedAt()).isLessThanOrEqualTo(event.recordedAt());
      if (opened != null) {
        assertThat(event.happenedAt()).isGreaterThanOrEqualTo(opened);
      }
      if (event.event() instanceof Event.MorningOpened && opened == null) {
        opened = event.happenedAt();
      }
      last = event.recordedAt();
    }
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void nothingIsGoodWithoutTheEvidenceThatItsSheetAsksFor(@ForAll("orders") List<Order> orders) {
    Day day = play(Day.open(), orders);
    for (RoomId room : day.morning().rooms().keySet()) {
      for (Placed placed : day.morning().itemsOf(room)) {
        if (placed.item().state() == ItemState.GOOD) {
          assertThat(isGoodBy(placed.sheet(), placed.item())).as(placed.toString()).isTrue();
        }
        if (placed.sheet().core()) {
          assertThat(placed.item().state()).isNotEqualTo(ItemState.LEFT_OUT);
        }
      }
    }
  }

  /** Written anew here, not taken from the code under test. */
  private static boolean isGoodBy(SheetItem sheet, Item item) {
    EvidenceRule rule = sheet.evidence();
    boolean signed =
        !rule.witness()
            || (item.by() != null && item.witness() != null && !item.by().equals(item.witness()));
    boolean fits =
        switch (rule.kind()) {
          case TOUCH ->
              item.evidence() instanceof Evidence.Touch
                  || (item.evidence() instanceof Evidence.Swept && !rule.witness());
          case TIME -> item.evidence() instanceof Evidence.Touch;
          case NUMBER ->
              item.evidence() instanceof Evidence.Reading r
                  && r.value() >= 50
                  && r.value() <= 250
                  && r.undone()
                  && "bar".equals(r.unit());
          case CHOICE ->
              item.evidence() instanceof Evidence.Choice c
                  && (c.word().equals("fine") || c.word().equals("changed"));
          case SCAN ->
              item.evidence() instanceof Evidence.Scan s
                  && (s.unit().equals(Fixture.US1) || s.unit().equals(Fixture.US2));
        };
    return signed && fits;
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void sayingAnObservationTwiceIsAsGoodAsOnce(@ForAll("orders") List<Order> orders) {
    Day day = Day.open();
    for (Order order : orders) {
      day.order(order);
      Order again =
          new Order(
              new CommandId("again"),
              order.command(),
              order.actor(),
              order.seen(),
              order.happenedAt(),
              order.now());
      boolean observed =
          order.command() != null
              && CommandKind.of(order.command()).manner() == Manner.OBSERVATION
              && !(order.command() instanceof Command.Mend)
              && !(order.command() instanceof Command.Fault);
      if (observed && day.last() instanceof Outcome.Accepted) {
        List<String> once = standing(day.morning());
        day.order(again);
        assertThat(day.last()).isInstanceOf(Outcome.Accepted.class);
        assertThat(standing(day.morning())).isEqualTo(once);
      }
    }
  }

  /** How things stand, without revisions, witnesses, and who said a step. */
  private static List<String> standing(Morning m) {
    List<String> list = new ArrayList<>();
    for (Item i : m.allItems()) {
      list.add(i.ref() + " " + i.state() + " " + i.since() + " " + i.by() + " " + i.evidence());
    }
    m.cases().values().forEach(c -> list.add(c.plan() + " " + c.steps()));
    m.people()
        .values()
        .forEach(p -> list.add(p.plan().id() + " " + p.arrivedAt() + p.leftAt() + p.room()));
    return list;
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void aRoomAndItsCaseAlwaysNameEachOther(@ForAll("orders") List<Order> orders) {
    Morning m = play(Day.open(), orders).morning();
    Set<CaseId> seen = new HashSet<>();
    for (RoomDay room : m.rooms().values()) {
      if (room.caseId() != null) {
        assertThat(seen.add(room.caseId())).isTrue();
        assertThat(m.cases().get(room.caseId()).plan().room()).isEqualTo(room.id());
        int asked = m.sheetOf(m.caseIn(room.id())).items().size();
        assertThat(m.itemsOf(room.id())).hasSize(asked);
      }
    }
    for (CaseDay day : m.cases().values()) {
      if (!day.cancelled()) {
        assertThat(m.rooms().get(day.plan().room()).caseId()).isEqualTo(day.plan().id());
      }
    }
    assertThat(m.phase()).isIn(Phase.OPEN, Phase.CLOSED);
  }

  @Property(tries = TRIES, edgeCases = EdgeCasesMode.NONE)
  void anErasedTextChangesNothingElse(@ForAll("orders") List<Order> orders)
      throws JsonProcessingException {
    Day day = play(Day.open(), orders);
    ObjectMapper erasing = Json.mapper(erasing());
    Morning again = Morning.NONE;
    for (Recorded event : day.journal()) {
      Recorded read = erasing.readValue(Json.write(event), Recorded.class);
      again = Board.apply(again, again.seq() + 1, read);
    }

    assertThat(erasing.writeValueAsString(again))
        .isEqualTo(erasing.writeValueAsString(day.morning()));
  }

  private static SimpleModule erasing() {
    SimpleModule module = new SimpleModule("erasing");
    module.addSerializer(
        Private.class,
        new JsonSerializer<>() {
          @Override
          public void serialize(Private value, JsonGenerator out, SerializerProvider p)
              throws IOException {
            out.writeString("erased");
          }
        });
    module.addDeserializer(
        Private.class,
        new JsonDeserializer<>() {
          @Override
          public Private deserialize(JsonParser in, DeserializationContext c) throws IOException {
            return Objects.requireNonNull(in.getValueAsString()).isEmpty() ? null : Private.ERASED;
          }
        });
    return module;
  }
}
