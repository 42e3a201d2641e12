package sunup.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import sunup.bedside.BedsideSettings;
import sunup.board.PersonId;
import sunup.board.PlaceId;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.SiteSettings;
import sunup.board.SuiteId;
import sunup.board.UnitPlan;
import sunup.push.PushTerms;

/**
 * What a site says of itself once: its suite, rooms, people, equipment and places. A morning's plan
 * is made of it and of the day's case list.
 *
 * @param file where it was read from, for messages
 * @param suite the suite's id, part of every morning's key
 * @param settings what a site decides
 * @param setUpBegins when the rooms' set-up is planned to begin, local time
 * @param rooms in the wall's order
 * @param roaming people who serve several rooms
 * @param units shared equipment
 * @param places places away from the rooms
 * @param words the site's own words for techniques and options, lower case, and what they mean
 * @param bedside what the site decides about bedside figures, and which its pharmacy has released
 * @param learns true if its openings freeze what its closed mornings taught of durations and of how
 *     people report
 * @param push on which terms phones are told that something is asked; null if none is
 */
public record SiteFile(
    String file,
    SuiteId suite,
    SiteSettings settings,
    LocalTime setUpBegins,
    List<Room> rooms,
    List<Roaming> roaming,
    List<UnitPlan> units,
    List<Place> places,
    Map<String, String> words,
    BedsideSettings bedside,
    boolean learns,
    PushTerms push) {

  /**
   * A room.
   *
   * @param people the people of its own
   * @param options options that every case in it has
   */
  public record Room(RoomId id, List<Post> people, List<String> options) {
    public Room {
      people = List.copyOf(people);
      options = List.copyOf(options);
    }
  }

  /**
   * Somebody of a room's own.
   *
   * @param minutesBefore when he or she is planned to be there: minutes before the target
   */
  public record Post(Role role, int minutesBefore) {}

  /**
   * Somebody who serves several rooms.
   *
   * @param id a pseudonym
   * @param covers empty means all rooms
   * @param at when he or she is planned to be there, local time
   */
  public record Roaming(PersonId id, Role role, List<RoomId> covers, LocalTime at) {
    public Roaming {
      covers = List.copyOf(covers);
    }
  }

  /**
   * A place.
   *
   * @param opens local time
   * @param walkMinutes one way
   */
  public record Place(PlaceId id, String wall, LocalTime opens, double walkMinutes) {}

  public SiteFile {
    rooms = List.copyOf(rooms);
    roaming = List.copyOf(roaming);
    units = List.copyOf(units);
    places = List.copyOf(places);
    words = Map.copyOf(words);
  }

  /**
   * @throws IllegalArgumentException if the site has no such room
   */
  public Room room(RoomId id) {
    return rooms.stream()
        .filter(r -> r.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no room " + id));
  }

  /** The file that comes with Sunup: an invented hospital, to try the board and to start from. */
  public static String standardText() {
    try (InputStream in = SiteFile.class.getResourceAsStream("site.json")) {
      if (in == null) {
        throw new IllegalStateException("site.json is missing from the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The invented hospital that comes with Sunup. */
  public static SiteFile standard() {
    SiteReader.Result read = SiteReader.read("site.json", standardText());
    if (read.site() == null) {
      throw new IllegalStateException("the site file that comes with Sunup: " + read.problems());
    }
    return read.site();
  }
}
