package sunup.live;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.lang.reflect.RecordComponent;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.codec.Json;
import sunup.live.fake.EveryPartSight;
import sunup.live.fake.ManualClock;
import sunup.live.fake.Rig;
import sunup.live.fake.TestScreen;
import sunup.wire.Audience;
import sunup.wire.Part;
import sunup.wire.ServerMessage;

class AudienceTest {
  private final ThreadLane lane = new ThreadLane("test-live");
  private Rig rig;

  @BeforeEach
  void start() throws Exception {
    rig = new Rig(lane, new EveryPartSight(), Limits.DEFAULT, new ManualClock());
  }

  @AfterEach
  void end() throws Exception {
    rig.close();
    lane.close();
  }

  /** All that a screen of this page gets: view, a frame that sets all, one that takes all away. */
  private TestScreen all(String page) throws Exception {
    TestScreen screen = rig.screen().hello(page + "-1", page);
    screen.await(ServerMessage.View.class, v -> true);
    long from = rig.owner().seq();
    for (int i = 1; i <= 3; i++) {
      rig.clock.pass(1_000);
      rig.owner().say("all anew");
      long seq = from + i;
      screen.await(ServerMessage.Frame.class, f -> f.upTo() >= seq);
    }
    return screen.barrier(1);
  }

  @Test
  void shouldNeverSendAStaffOrDeskPartOrFieldToAWall() throws Exception {
    TestScreen wall = all("wall");

    Set<String> allowed = new TreeSet<>(Set.of("m", "part"));
    for (Class<?> kind : ServerMessage.class.getPermittedSubclasses()) {
      names(kind, allowed);
    }
    names(Part.SuitePart.class, allowed);
    names(Part.RoomPart.class, allowed);
    names(Part.NeedPart.class, allowed);
    Set<String> used = new TreeSet<>();
    for (String line : wall.rawText().lines().toList()) {
      fields(Json.mapper().readTree(line), used);
    }
    assertThat(allowed).containsAll(used);
    assertThat(wall.parts().values()).allMatch(p -> p.audience() == Audience.WALL);
    assertThat(wall.rawText())
        .contains("FOR-WALL")
        .doesNotContain("FOR-STAFF")
        .doesNotContain("FOR-DESK");
  }

  @Test
  void shouldSendStaffTheirPartsAndNotTheDesks() throws Exception {
    for (String page : new String[] {"station", "holding"}) {
      TestScreen staff = all(page);

      assertThat(staff.parts().values()).allMatch(p -> p.audience() != Audience.DESK);
      assertThat(staff.rawText())
          .contains("FOR-WALL")
          .contains("FOR-STAFF")
          .doesNotContain("FOR-DESK");
    }
  }

  @Test
  void shouldSendAPhoneOnlyWhoseRoomsAndWhatIsAsked() throws Exception {
    TestScreen phone = all("pocket");

    assertThat(phone.parts().values())
        .allMatch(p -> p.audience() == Audience.WALL || p.audience() == Audience.POCKET);
    assertThat(phone.rawText()).doesNotContain("FOR-STAFF").doesNotContain("FOR-DESK");
  }

  @Test
  void shouldSendTheDeskAll() throws Exception {
    assertThat(all("desk").rawText())
        .contains("FOR-WALL")
        .contains("FOR-STAFF")
        .contains("FOR-DESK");
  }

  private static void names(Class<?> record, Set<String> into) {
    for (RecordComponent component : record.getRecordComponents()) {
      into.add(component.getName());
    }
  }

  private static void fields(JsonNode node, Set<String> into) {
    node.fieldNames().forEachRemaining(into::add);
    node.forEach(child -> fields(child, into));
  }
}
