package sunup.forecast;

import java.util.ArrayList;
import java.util.List;
import sunup.forecast.ForecastInput.Arrival;
import sunup.forecast.ForecastInput.Extra;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.Need;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.Settings;
import sunup.forecast.ForecastInput.Silence;
import sunup.forecast.ForecastInput.State;
import sunup.forecast.ForecastInput.Stretch;

/** Builders of inputs for tests. Minutes are of a day whose midnight is an invented moment. */
final class Mornings {
  static final long MINUTE = 60_000;

  /** A midnight: 2026-11-25 in UTC. */
  static final long MIDNIGHT = 1_795_564_800_000L;

  /** Nobody is called away, nobody forgets: for closed forms. */
  static final Settings PLAIN =
      new Settings(0, 0, 240 * MINUTE, 0, new Silence(0, 0, 0, 1, 0, new Draw.Constant(0)));

  private Mornings() {}

  static long at(int hour, int minute) {
    return MIDNIGHT + (hour * 60L + minute) * MINUTE;
  }

  static Draw exactly(double minutes) {
    return new Draw.Constant(Math.round(minutes * MINUTE));
  }

  static Draw about(double usual, double oneInTen) {
    return new Draw.LogNormal(Math.round(usual * MINUTE), Math.round(oneInTen * MINUTE));
  }

  static ForecastInput morning(
      long now, int trials, Settings settings, List<PersonIn> people, List<RoomIn> rooms) {
    return new ForecastInput(1, now, 42, trials, settings, people, List.of(), List.of(), rooms);
  }

  static ForecastInput with(ForecastInput in, List<KindIn> kinds, List<PlaceIn> places) {
    return new ForecastInput(
        1, in.now(), in.seed(), in.trials(), in.settings(), in.people(), kinds, places, in.rooms());
  }

  static ForecastInput withSeed(ForecastInput in, long seed) {
    return in.with(seed, in.trials());
  }

  static ForecastInput withRooms(ForecastInput in, List<RoomIn> rooms) {
    return new ForecastInput(
        1,
        in.now(),
        in.seed(),
        in.trials(),
        in.settings(),
        in.people(),
        in.kinds(),
        in.places(),
        rooms);
  }

  static RoomIn room(String id, long target, long begins, List<ItemIn> items) {
    return new RoomIn(id, "case-" + id, target, "start", begins, null, null, items);
  }

  static Person person(String id, String... roles) {
    return new Person(id, roles);
  }

  static Work item(String key) {
    return new Work(key);
  }

  /** A person in the making. */
  static final class Person {
    private final String id;
    private final List<String> roles;
    private String room;
    private List<String> covers = List.of();
    private Long arrivedAt;
    private long plannedAt = MIDNIGHT;
    private Draw late;
    private boolean reported = true;
    private Long leavesAt;
    private List<Stretch> away = List.of();
    private Long lastWordAt;
    private List<String> styles;

    private Person(String id, String... roles) {
      this.id = id;
      this.roles = List.of(roles);
    }

    Person in(String ownRoom) {
      room = ownRoom;
      return this;
    }

    Person covering(String... rooms) {
      covers = List.of(rooms);
      return this;
    }

    Person here(long since) {
      arrivedAt = since;
      plannedAt = since;
      return this;
    }

    Person plans(long planned) {
      plannedAt = planned;
      return this;
    }

    Person comes(long planned, Draw lateBy) {
      plannedAt = planned;
      late = lateBy;
      return this;
    }

    Person unreported() {
      reported = false;
      return this;
    }

    Person leaves(long at) {
      leavesAt = at;
      return this;
    }

    Person away(long from, long to) {
      away = List.of(new Stretch(from, to));
      return this;
    }

    Person spoke(long at) {
      lastWordAt = at;
      return this;
    }

    Person reporting(String... ways) {
      styles = List.of(ways);
      return this;
    }

    PersonIn build() {
      return new PersonIn(
          id,
          roles,
          room,
          covers,
          arrivedAt,
          plannedAt,
          late,
          reported,
          leavesAt,
          away,
          lastWordAt,
          styles);
    }
  }

  /** An item in the making. */
  static final class Work {
    private final String key;
    private String section = "set-up";
    private boolean ofCase;
    private final List<List<String>> who = new ArrayList<>();
    private Draw hands;
    private Draw waits;
    private Extra extra;
    private List<String> after = List.of();
    private String gates;
    private String marks;
    private Long notBefore;
    private String place;
    private boolean inRoom;
    private final List<Need> needs = new ArrayList<>();
    private Arrival arrival;
    private Long life;
    private Progress progress;
    private boolean asked;

    private Work(String key) {
      this.key = key;
    }

    Work section(String name) {
      section = name;
      return this;
    }

    Work ofCase() {
      ofCase = true;
      return this;
    }

    Work by(String... roles) {
      who.add(List.of(roles));
      return this;
    }

    Work takes(Draw d) {
      hands = d;
      return this;
    }

    Work waits(Draw d) {
      waits = d;
      return this;
    }

    Work oneIn(int n, double minutes) {
      extra = new Extra(n, Math.round(minutes * MINUTE));
      return this;
    }

    Work after(String... keys) {
      after = List.of(keys);
      return this;
    }

    Work gates(String step) {
      gates = step;
      return this;
    }

    Work marks(String step) {
      marks = step;
      return this;
    }

    Work notBefore(long t) {
      notBefore = t;
      return this;
    }

    Work at(String placeId) {
      place = placeId;
      return this;
    }

    Work inRoom() {
      inRoom = true;
      return this;
    }

    Work needs(String kind, int units, String until) {
      needs.add(new Need(kind, units, until, false));
      return this;
    }

    Work holds(String kind, int units, String until) {
      needs.add(new Need(kind, units, until, true));
      return this;
    }

    Work comes(long from, Draw late, boolean silent) {
      arrival = new Arrival(from, late, silent);
      return this;
    }

    Work lives(double minutes) {
      life = Math.round(minutes * MINUTE);
      return this;
    }

    Work good(long since, String by) {
      progress = new Progress(State.GOOD, since, by, null, null, null);
      return this;
    }

    Work inHand(long since, String by) {
      progress = new Progress(State.IN_HAND, since, by, null, null, null);
      return this;
    }

    Work fault(long since, Draw mend, List<String> menders, String taken) {
      progress = new Progress(State.FAULT, since, null, mend, menders, taken);
      return this;
    }

    Work asked() {
      asked = true;
      return this;
    }

    ItemIn build() {
      return new ItemIn(
          key, section, ofCase, who, hands, waits, extra, after, gates, marks, notBefore, place,
          inRoom, needs, arrival, life, progress, asked);
    }
  }

  static List<ItemIn> items(Work... works) {
    List<ItemIn> items = new ArrayList<>();
    for (Work work : works) {
      items.add(work.build());
    }
    return items;
  }

  static List<PersonIn> people(Person... persons) {
    List<PersonIn> people = new ArrayList<>();
    for (Person person : persons) {
      people.add(person.build());
    }
    return people;
  }
}
