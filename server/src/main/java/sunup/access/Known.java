package sunup.access;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.SuiteId;
import sunup.push.Subscription;

/**
 * Screens, people and who is signed on where, as last read. Never changed: a change makes another.
 *
 * @param stamp grows with each change
 * @param screens by id, without those that were revoked
 * @param keys by fingerprint
 * @param people by code, without those who may not sign on any more
 * @param sessions by id: those under which a touch may still come
 * @param locks who may not try at a screen now
 * @param pushes by sign-on: phones that are told
 */
record Known(
    long stamp,
    Map<String, PairedScreen> screens,
    Map<String, Key> keys,
    Map<String, Person> people,
    Map<String, SignedOn> sessions,
    List<Lock> locks,
    Map<String, Subscription> pushes) {
  static final Known NOTHING =
      new Known(-1, Map.of(), Map.of(), Map.of(), Map.of(), List.of(), Map.of());

  /** In place of a suite: all of them. */
  static final String EVERYWHERE = "*";

  Known {
    screens = Map.copyOf(screens);
    keys = Map.copyOf(keys);
    people = Map.copyOf(people);
    sessions = Map.copyOf(sessions);
    locks = List.copyOf(locks);
    pushes = Map.copyOf(pushes);
  }

  /**
   * A screen's key.
   *
   * @param used false until it was used at a connect
   */
  record Key(String screen, boolean used) {}

  /** A role of a person in a suite. */
  record Grant(String suite, Role role) {}

  /** Somebody who may sign on. */
  record Person(String code, Set<Grant> grants) {
    Person {
      grants = Set.copyOf(grants);
    }

    boolean may(SuiteId suite, Role role) {
      return grants.contains(new Grant(suite.value(), role))
          || grants.contains(new Grant(EVERYWHERE, role));
    }
  }

  /** Somebody who typed too many wrong PINs at a screen. */
  record Lock(String person, String screen) {}

  /** The screen of a key, if it is one of ours. */
  Optional<PairedScreen> screenOf(String fingerprint) {
    Key key = keys.get(fingerprint);
    return key == null ? Optional.empty() : Optional.ofNullable(screens.get(key.screen()));
  }

  /** Who is signed on at a screen now; a sign-on ends by itself. */
  Optional<SignedOn> signedAt(String screen, long now) {
    return sessions.values().stream()
        .filter(one -> one.screen().equals(screen) && one.endedAt() == null)
        .filter(one -> one.beganAt() > now - AccessStore.SESSION_MS)
        .filter(this::stillMay)
        .findFirst();
  }

  /** False once the role was taken away, whatever else ended. */
  boolean stillMay(SignedOn one) {
    Person person = people.get(one.person());
    return person != null && person.may(one.suite(), one.role());
  }

  /**
   * A screen that is one of ours.
   *
   * @param name as the journal tells it, for example {@code station-7}
   * @param room a station's, else null
   * @param pairedBy code of the person who typed its code, or whose own it is
   * @param own true for a browser of one person, which nobody paired at a desk: it is known as long
   *     as that person is signed on
   */
  record PairedScreen(
      String id,
      String name,
      Page page,
      SuiteId suite,
      RoomId room,
      long pairedAt,
      String pairedBy,
      boolean own) {}

  /**
   * A person's time at a screen.
   *
   * @param post the person of the morning's plan, or null
   * @param endedAt null while it lasts
   */
  record SignedOn(
      String id,
      String screen,
      String person,
      SuiteId suite,
      Role role,
      PersonId post,
      long beganAt,
      Long endedAt) {
    /** Who it is on the board: the post of the morning, else the code. */
    PersonId onBoard() {
      return Objects.requireNonNullElseGet(post, () -> new PersonId(person));
    }
  }
}
