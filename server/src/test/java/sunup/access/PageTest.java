package sunup.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sunup.board.Actor;
import sunup.board.Morning;
import sunup.board.PersonId;
import sunup.board.PersonPlan;
import sunup.board.Role;
import sunup.wire.Audience;

class PageTest {
  private static final PersonId PERSON = new PersonId("p1");

  private static Morning with(Role role) {
    Map<PersonId, Morning.PersonDay> people = new LinkedHashMap<>();
    people.put(
        PERSON,
        new Morning.PersonDay(
            new PersonPlan(PERSON, role, null, List.of(), 0), null, null, null, null, null, null));
    Morning none = Morning.NONE;
    return new Morning(
        none.id(),
        none.phase(),
        none.seq(),
        none.settings(),
        none.beginsAt(),
        none.openedAt(),
        none.closedAt(),
        none.lastRecordedAt(),
        none.rooms(),
        none.cases(),
        people,
        none.units(),
        none.places(),
        none.sheets(),
        none.roomItems(),
        none.caseItems(),
        none.notes(),
        none.moves(),
        java.util.Map.of(),
        java.util.Map.of(),
        null,
        java.util.Map.of());
  }

  @Test
  void shouldGiveAPageItsAudience() {
    assertThat(Page.named("wall").map(Page::audience)).contains(Audience.WALL);
    assertThat(Page.named("station").map(Page::audience)).contains(Audience.STAFF);
    assertThat(Page.named("holding").map(Page::audience)).contains(Audience.STAFF);
    assertThat(Page.named("pocket").map(Page::audience)).contains(Audience.POCKET);
    assertThat(Page.named("desk").map(Page::audience)).contains(Audience.DESK);
    assertThat(Page.named("WALL")).isEmpty();
  }

  @Test
  void shouldJudgeATouchAtAStationInTheRoleOfThePersonWhoSignedIt() {
    Actor actor = Page.STATION.actor("station-7", PERSON, with(Role.ANAESTHETIST));

    assertThat(actor).isEqualTo(new Actor(Role.ANAESTHETIST, PERSON, "station-7"));
    assertThat(Page.STATION.actor("station-7", null, with(Role.ANAESTHETIST)).role())
        .isEqualTo(Role.CIRCULATING);
    assertThat(Page.STATION.actor("station-7", PERSON, null).role()).isEqualTo(Role.CIRCULATING);
  }

  @Test
  void shouldNotMakeADeskOfAStationByNamingSomebodyOfTheDesk() {
    for (Role role : new Role[] {Role.DESK, Role.ADMIN, Role.MANAGER}) {
      assertThat(Page.STATION.actor("station-7", PERSON, with(role)).role())
          .isEqualTo(Role.CIRCULATING);
    }
  }

  @Test
  void shouldTakeNothingFromAPhoneUntilSomebodyIsNamedAndNeverMakeADeskOfIt() {
    assertThat(Page.POCKET.actor("pocket-1", null, with(Role.TECHNICIAN)).role())
        .isEqualTo(Role.DISPLAY);
    assertThat(Page.POCKET.actor("pocket-1", PERSON, with(Role.TECHNICIAN)).role())
        .isEqualTo(Role.TECHNICIAN);
    assertThat(Page.POCKET.actor("pocket-1", PERSON, with(Role.DESK)).role())
        .isEqualTo(Role.DISPLAY);
  }

  @Test
  void shouldJudgeAWallAsADisplayWhoeverItNames() {
    assertThat(Page.WALL.actor("wall-1", PERSON, with(Role.ANAESTHETIST)).role())
        .isEqualTo(Role.DISPLAY);
    assertThat(Page.DESK.actor("desk-1", PERSON, with(Role.ANAESTHETIST)).role())
        .isEqualTo(Role.DESK);
  }
}
