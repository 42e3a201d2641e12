package sunup.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;

class RightsTest {
  private static final Map<String, Role> LETTERS =
      Map.ofEntries(
          Map.entry("A", Role.ANAESTHETIST),
          Map.entry("V", Role.SUPERVISOR),
          Map.entry("R", Role.TRAINEE),
          Map.entry("T", Role.TECHNICIAN),
          Map.entry("N", Role.CIRCULATING),
          Map.entry("S", Role.SCRUB),
          Map.entry("U", Role.SURGEON),
          Map.entry("H", Role.HOLDING),
          Map.entry("P", Role.PORTER),
          Map.entry("C", Role.CLEANER),
          Map.entry("Y", Role.PHARMACY),
          Map.entry("D", Role.DESK),
          Map.entry("M", Role.MANAGER),
          Map.entry("I", Role.ADMIN),
          Map.entry("X", Role.DISPLAY));

  /**
   * Who may give which command, a column a role; a dot is a refusal. The surgeon's, the manager's
   * and the display's columns have dots only.
   */
  private static final String TABLE =
      """
      plan            .. .. .. . ....D.I.
      open-morning    .. .. .. . ....D.I.
      close-morning   .. .. .. . ....D.I.
      add-case        .. .. .. . ....D.I.
      change-case     .. .. .. . ....D.I.
      swap-cases      .. .. .. . ....D.I.
      confirm-swap    AV RT NS . ........
      cancel-case     .. .. .. . ....D.I.
      agree-later     .V .. .. . ....D.I.
      say-room        AV RT NS . ..C.D.I.
      add-person      .. .. .. . ....D.I.
      arrive          AV RT NS . HPCYD.I.
      expect-person   AV RT NS . HPCYD.I.
      join            AV RT NS . HPCYD.I.
      leave           AV RT NS . HPCYD.I.
      hand-over       AV RT NS . HPCYD.I.
      begin           AV RT NS . HPCYD.I.
      good            AV RT NS . HPCYD.I.
      sweep           AV RT NS . HPCYD.I.
      fault           AV RT NS . HPCYD.I.
      take-fault      AV RT NS . ..CYD.I.
      mend            AV RT NS . HPCYD.I.
      reopen          AV RT NS . HPCYD.I.
      leave-out       AV .. NS . H.......
      expect-item     AV RT NS . HPCYD.I.
      undo            AV RT NS . HPCYD.I.
      claim           AV RT NS . HP..D.I.
      release         AV RT NS . HP..D.I.
      promise-unit    .V .. .. . ....D.I.
      place-opens     .. .. .. . ...YD.I.
      take-holdup     AV RT NS . HPCYD.I.
      ask-help        AV RT NS . HPCYD.I.
      answer-help     AV RT NS . HPCYD.I.
      ask-move        .V .. .. . ....D.I.
      answer-move     AV RT NS . HPCYD.I.
      done-move       AV RT NS . HPCYD.I.
      withdraw-move   .V .. .. . ....D.I.
      report-ready    AV R. N. . ....D.I.
      reach           AV RT NS . HPCYD.I.
      give-reason     AV RT NS . H...D.I.
      agree-reason    AV RT NS . H...D.I.
      dispute-reason  AV RT NS . H...D.I.
      add-note        AV RT NS . HPCYD.I.
      draw-drugs      AV R. N. . ........
      discard-drug    AV R. N. . ........
      count-drug      AV R. N. . ...Y....
      set-up-next     AV RT N. . ....D.I.
      """;

  @Test
  void shouldAllowWhatTheTableAllowsAndRefuseAllElse() {
    Map<String, String> table = new TreeMap<>();
    TABLE
        .lines()
        .forEach(
            line -> {
              int end = line.indexOf(' ');
              table.put(line.substring(0, end), line.substring(end).replace(" ", ""));
            });

    assertThat(table).hasSize(CommandKind.values().length);
    for (CommandKind kind : CommandKind.values()) {
      String row = table.get(kind.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
      assertThat(row).as(kind.name()).hasSize(LETTERS.size());
      LETTERS.forEach(
          (letter, role) ->
              assertThat(Rights.who(kind).contains(role))
                  .as(kind + " by " + role)
                  .isEqualTo(row.contains(letter)));
    }
  }

  @Test
  void shouldAskTheTableForEveryCommandWhenDeciding() {
    Morning morning = Day.open().morning();
    List<String> wrong = new ArrayList<>();
    for (Command command : Samples.oneOfEach()) {
      CommandKind kind = CommandKind.of(command);
      for (Role role : Role.values()) {
        Actor actor = new Actor(role, null, "station-1");
        Outcome outcome =
            Board.decide(
                morning,
                new Order(
                    new CommandId("x"),
                    command,
                    actor,
                    morning.seq(),
                    Fixture.BEGIN,
                    Fixture.BEGIN + Fixture.MINUTE));
        boolean refused =
            outcome instanceof Outcome.Refused r && r.code() == RefusalCode.NOT_ALLOWED;
        if (!Rights.who(kind).contains(role) && !refused) {
          wrong.add(role + " was let through with " + kind);
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void shouldLetNothingThroughWhenTheActorHasNoRole() {
    Day day = Day.open().by(new Actor(null, null, "desk"), new Command.AddNote(null, note()));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);

    day.by(null, new Command.AddNote(null, note()));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
  }

  @Test
  void shouldLetHoldingSpeakOfPatientAndSurgeonOnly() {
    Day day = Day.open().by(Fixture.HOLDING, good(Fixture.of(Fixture.C1, "patient.identity")));
    assertThat(day.events()).hasSize(1);

    day.by(Fixture.HOLDING, good(Fixture.of(Fixture.C1, "surgeon.seen")));
    assertThat(day.events()).hasSize(1);

    day.by(Fixture.HOLDING, good(Fixture.in(Fixture.R1, "machine.bag")));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    assertThat(day.words()).contains("anaesthetist");
  }

  @Test
  void shouldLetHoldingSayThatAPatientLeftButNothingElseOfTheStart() {
    SheetItem plain =
        Fixture.item(
            "start.transport", SheetItem.Belongs.CASE, Step.WHEELS_IN, EvidenceRule.TOUCHED, null);
    SheetItem check =
        Fixture.item(
            "start.check", SheetItem.Belongs.CASE, Step.INDUCTION, EvidenceRule.TOUCHED, null);
    assertThat(Rights.mayTouch(Role.HOLDING, plain, CommandKind.GOOD)).isTrue();
    assertThat(Rights.mayTouch(Role.HOLDING, check, CommandKind.GOOD)).isFalse();
  }

  @Test
  void shouldRefuseAnItemOfAnotherRoomUnlessThePersonIsThere() {
    ItemRef bag = Fixture.in(Fixture.R2, "machine.bag");
    Day day = Day.open().by(Fixture.ANAESTHETIST_1, good(bag));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);

    day.by(Fixture.ANAESTHETIST_1, new Command.Join(Fixture.A1, Fixture.R2))
        .by(Fixture.ANAESTHETIST_1, good(bag));
    assertThat(day.events()).hasSize(1);
  }

  @Test
  void shouldLetRoamingPeopleSpeakOfTheRoomsTheyServe() {
    Actor technician = new Actor(Role.TECHNICIAN, Fixture.T1, "pocket-T1");
    Actor supervisor = new Actor(Role.SUPERVISOR, Fixture.V1, "pocket-V1");
    Day day = Day.open();

    day.by(technician, good(Fixture.in(Fixture.R3, "machine.bag")));
    assertThat(day.events()).hasSize(1);
    day.by(supervisor, good(Fixture.in(Fixture.R2, "machine.bag")));
    assertThat(day.events()).hasSize(1);
    day.by(supervisor, good(Fixture.in(Fixture.R3, "suction.strong")));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
  }

  @Test
  void shouldTakeUnsignedTouchesFromTheRoomsOwnStationsOnly() {
    Day day = Day.open();
    ItemRef bag = Fixture.in(Fixture.R1, "machine.bag");

    day.by(new Actor(Role.CIRCULATING, null, "station-2"), good(bag));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    day.by(new Actor(Role.CIRCULATING, null, "somewhere"), good(bag));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    day.by(new Actor(Role.CIRCULATING, null, "station-1.b"), good(bag));
    assertThat(day.events()).hasSize(1);
  }

  @Test
  void shouldLetTheDeskTellFaultsOfAnythingButNoMachineGood() {
    Day day = Day.open();
    ItemRef bag = Fixture.in(Fixture.R1, "machine.bag");

    day.by(Fixture.DESK, good(bag));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    day.by(Fixture.DESK, new Command.Fault(bag, note()));
    assertThat(day.state(bag)).isEqualTo(ItemState.FAULT);
  }

  @Test
  void shouldLetOnlyThoseLeaveOutWhoAnswerForIt() {
    Day day = Day.open();
    Actor nurse = Fixture.at(Fixture.R1, Role.CIRCULATING, Fixture.N1);

    day.decided(nurse, new Command.LeaveOut(Fixture.of(Fixture.C1, "airway.planb"), note()));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    day.decided(nurse, new Command.LeaveOut(Fixture.in(Fixture.R1, "room.cleaned"), note()));
    assertThat(day.events()).hasSize(1);
  }

  @Test
  void shouldLetATraineeSayReadyOnlyUnderSomebodyWhoAnswersForTheRoom() {
    PersonId trainee = new PersonId("R9");
    Actor signed = Fixture.at(Fixture.R3, Role.TRAINEE, trainee);
    Day day = Day.open().by(Fixture.DESK, added(trainee, Role.TRAINEE));

    day.by(signed, new Command.ReportReady(Fixture.R3));
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
    assertThat(day.words()).contains("supervisor", "ask the desk");
    // What is seen of an item is never lost for it.
    day.by(signed, good(Fixture.in(Fixture.R3, "machine.bag")));
    assertThat(day.events()).hasSize(1);

    day.by(Fixture.DESK, added(new PersonId("V9"), Role.SUPERVISOR))
        .by(signed, new Command.ReportReady(Fixture.R3));
    assertThat(day.events()).hasSize(1);
  }

  @Test
  void shouldLetATraineeSignForDrugsOnlyWhileSomebodyWhoAnswersIsThere() {
    Actor trainee = Fixture.at(Fixture.R1, Role.TRAINEE, null);
    Command drawn =
        new Command.CountDrug(
            Fixture.C1, CountKind.DRAWN, "fentanyl", 1, null, null, null, null, Fixture.N1);
    Day day = Day.openWithDrugs().by(Fixture.DESK, new Command.Leave(Fixture.A1, null));
    day.by(trainee, drawn);
    assertThat(day.code()).isNotEqualTo(RefusalCode.NOT_ALLOWED);

    day.by(Fixture.DESK, new Command.Leave(Fixture.V1, null)).by(trainee, drawn);
    assertThat(day.code()).isEqualTo(RefusalCode.NOT_ALLOWED);
  }

  private static Command added(PersonId who, Role role) {
    return new Command.AddPerson(new PersonPlan(who, role, Fixture.R3, List.of(), Fixture.BEGIN));
  }

  private static Command good(ItemRef item) {
    return new Command.Good(item, new Evidence.Touch(), null, null);
  }

  private static Private note() {
    return Private.of("as told by telephone");
  }
}
