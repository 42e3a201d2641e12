package sunup.review.facts;

import java.util.HashMap;
import java.util.Map;
import sunup.board.Morning;
import sunup.board.Morning.PersonDay;

/** Puts roles in the place of people, so that what is kept names nobody. */
record RolesOf(Map<String, String> roles) {
  static RolesOf morning(Morning state) {
    Map<String, String> roles = new HashMap<>();
    for (PersonDay person : state.people().values()) {
      roles.put(person.plan().id().value(), person.plan().role().word());
    }
    return new RolesOf(roles);
  }

  /**
   * The thing of a share or piece as it may be kept: places and kinds of equipment as they are, a
   * person as a role; one whose role is not known not at all.
   */
  String thing(String kind, String thing) {
    return kind.equals("place") || kind.equals("equipment") ? thing : roles.get(thing);
  }
}
