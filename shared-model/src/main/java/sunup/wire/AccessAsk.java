package sunup.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.codec.Maybe;

/** What is asked about screens and people. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "ask")
@JsonSubTypes({
  @JsonSubTypes.Type(value = AccessAsk.Look.class, name = "look"),
  @JsonSubTypes.Type(value = AccessAsk.LookUp.class, name = "look-up"),
  @JsonSubTypes.Type(value = AccessAsk.Pair.class, name = "pair"),
  @JsonSubTypes.Type(value = AccessAsk.Revoke.class, name = "revoke"),
  @JsonSubTypes.Type(value = AccessAsk.SetPerson.class, name = "set-person"),
  @JsonSubTypes.Type(value = AccessAsk.NewPin.class, name = "new-pin"),
  @JsonSubTypes.Type(value = AccessAsk.EndPerson.class, name = "end-person"),
  @JsonSubTypes.Type(value = AccessAsk.Lift.class, name = "lift"),
})
@JsonInclude(JsonInclude.Include.NON_NULL)
public sealed interface AccessAsk {
  /** All screens, people and locks of this suite. */
  record Look() implements AccessAsk {}

  /** Which screen shows this code: its address and when it asked. */
  record LookUp(String code) implements AccessAsk {}

  /**
   * The screen that shows this code is one of ours.
   *
   * @param page what it is: wall, desk, station, holding or pocket
   * @param suite its suite, or absent for the one of the screen that asks
   * @param room a station's room
   */
  record Pair(String code, String page, @Maybe String suite, @Maybe RoomId room)
      implements AccessAsk {}

  /** The screen is none of ours any more; its sockets are closed at once. */
  record Revoke(String screen) implements AccessAsk {}

  /**
   * Somebody who may sign on, or other roles for somebody who may already.
   *
   * @param code what the person is called here: no name
   * @param pin the first one; absent keeps what there is
   * @param roles in this suite; none takes all away
   */
  record SetPerson(String code, @Maybe String pin, List<Role> roles) implements AccessAsk {}

  /**
   * Another PIN: one's own by the old one, or somebody's by an administrator.
   *
   * @param person whose
   * @param old one's own present PIN; absent for an administrator
   */
  record NewPin(String person, @Maybe String old, String pin) implements AccessAsk {}

  /** The person may not sign on any more and is signed off everywhere. */
  record EndPerson(String person) implements AccessAsk {}

  /**
   * A colleague lets somebody try again who was locked out at a screen.
   *
   * @param screen absent for the one that it is asked at
   */
  record Lift(String person, @Maybe String screen) implements AccessAsk {}
}
