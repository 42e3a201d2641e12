package sunup.access;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import sunup.board.Actor;
import sunup.board.Morning;
import sunup.board.PersonId;
import sunup.board.Role;
import sunup.wire.Audience;

/**
 * Which page a screen shows. Where screens are not paired this alone says what it may read and,
 * with the person who signed a touch, in which role its commands are judged; where they are, it is
 * what the screen was paired as.
 */
public enum Page {
  WALL(Audience.WALL, Role.DISPLAY),
  STATION(Audience.STAFF, Role.CIRCULATING),
  HOLDING(Audience.STAFF, Role.HOLDING),
  /** Of one person: nothing can be said there until somebody is named. */
  POCKET(Audience.POCKET, Role.DISPLAY),
  DESK(Audience.DESK, Role.DESK);

  /** Roles that nobody gets at a station or on a phone by naming a person. */
  private static final Set<Role> NOT_BY_NAME =
      EnumSet.of(Role.DESK, Role.MANAGER, Role.ADMIN, Role.DISPLAY);

  private static final Set<Role> AT_DESK =
      EnumSet.of(Role.DESK, Role.ADMIN, Role.SUPERVISOR, Role.MANAGER);

  private final Audience audience;
  private final Role role;

  Page(Audience audience, Role role) {
    this.audience = audience;
    this.role = role;
  }

  /** The page of this name, in lower case. */
  public static Optional<Page> named(String name) {
    for (Page page : values()) {
      if (page.word().equals(name)) {
        return Optional.of(page);
      }
    }
    return Optional.empty();
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public Audience audience() {
    return audience;
  }

  /**
   * What is told while somebody is signed on, where screens are paired. A manager asks how it went,
   * and is told of the morning that is on only what may hang on a wall: no names.
   *
   * @param signed or null
   */
  Audience audience(Role signed) {
    return signed == Role.MANAGER ? Audience.WALL : audience;
  }

  /** Whether somebody of this role may sign on here, where screens are paired. */
  boolean mayBe(Role its) {
    return switch (this) {
      case WALL -> false;
      case DESK -> AT_DESK.contains(its);
      default -> !NOT_BY_NAME.contains(its);
    };
  }

  /**
   * Who gives a command here.
   *
   * @param person who signed it, or null
   * @param morning the state that says which role the person has, or null if not known
   */
  public Actor actor(String screen, PersonId person, Morning morning) {
    Role judged = role;
    boolean named = this == STATION || this == POCKET;
    if (named && person != null && morning != null) {
      Morning.PersonDay known = morning.people().get(person);
      if (known != null && !NOT_BY_NAME.contains(known.plan().role())) {
        judged = known.plan().role();
      }
    }
    return new Actor(judged, person, screen);
  }
}
