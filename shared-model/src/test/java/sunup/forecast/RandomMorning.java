package sunup.forecast;

import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.about;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.person;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.Settings;
import sunup.forecast.Mornings.Person;
import sunup.forecast.Mornings.Work;

/** Mornings with everything in them, from a seed. */
final class RandomMorning {
  static final long NOW = at(6, 50);
  private static final long TARGET = at(7, 30);

  private final Random random;
  private boolean warmed;

  private RandomMorning(long seed) {
    random = new Random(seed);
  }

  /** Rooms that share what may be shared; with {@code alone} each has all to itself. */
  static ForecastInput of(long seed, int rooms, int trials, boolean alone) {
    return new RandomMorning(seed).morning(seed, rooms, trials, alone);
  }

  private ForecastInput morning(long seed, int rooms, int trials, boolean alone) {
    List<RoomIn> list = new ArrayList<>();
    List<PersonIn> people = new ArrayList<>();
    for (int r = 1; r <= rooms; r++) {
      String id = "r" + r;
      list.add(room(id, alone));
      people.add(own("a" + r, "anaesthetist", id));
      people.add(own("n" + r, "nurse", id));
      if (alone) {
        people.add(roaming("t" + r, "technician").covering(id).build());
        people.add(roaming("v" + r, "supervisor").covering(id).build());
      }
    }
    if (!alone) {
      people.add(roaming("t", "technician").build());
      people.add(roaming("v", "supervisor").away(at(7, 0), at(7, 10)).build());
      people.add(roaming("w", "supervisor").leaves(at(9, 0)).build());
    }
    return new ForecastInput(
        1,
        NOW,
        seed,
        trials,
        Settings.DEFAULT,
        people,
        List.of(
            new KindIn("scanner", alone ? 100 : 1, alone ? List.of() : List.of("r" + rooms)),
            new KindIn("warmer", alone ? 100 : 2, List.of())),
        List.of(new PlaceIn("pharmacy", at(7, 0), about(1, 2))),
        list);
  }

  private PersonIn own(String id, String role, String room) {
    Person p = person(id, role).in(room).comes(at(6, 35), about(4, 9));
    int how = random.nextInt(4);
    if (how == 0) {
      return p.unreported().build();
    }
    if (how == 1) {
      return p.build();
    }
    p.here(at(6, 35));
    return how == 2 ? p.build() : p.spoke(NOW).build();
  }

  private Person roaming(String id, String role) {
    return random.nextInt(3) == 0
        ? person(id, role).comes(at(6, 45), about(5, 11))
        : person(id, role).here(at(6, 30));
  }

  private RoomIn room(String id, boolean alone) {
    List<ItemIn> items = new ArrayList<>();
    warmed = false;
    int n = 6 + random.nextInt(8);
    String[] roles = {"anaesthetist", "nurse", "technician", "supervisor"};
    for (int i = 0; i < n; i++) {
      String role = roles[random.nextInt(4)];
      double usual = 1 + random.nextInt(6);
      Work w =
          item("i" + i)
              .section("s" + i / 3)
              .takes(about(usual, usual * (1.3 + random.nextDouble())))
              .by(role)
              .gates(random.nextInt(6) == 0 ? null : random.nextBoolean() ? "sent-for" : "start");
      features(w, i, role, alone);
      items.add(w.build());
    }
    items.add(
        item("seen")
            .comes(at(6, 30), about(25, 50), random.nextBoolean())
            .gates("sent-for")
            .build());
    items.add(item("sent").marks("sent-for").notBefore(TARGET - 10 * MINUTE).build());
    items.add(
        item("in")
            .marks("start")
            .after("sent")
            .by("nurse")
            .takes(about(5, 9))
            .notBefore(TARGET)
            .build());
    items.add(
        item("induction")
            .marks("induction")
            .after("in")
            .by("anaesthetist")
            .by("supervisor")
            .takes(about(6, 13))
            .build());
    Draw occupied = random.nextInt(6) == 0 ? about(6, 12) : null;
    return new RoomIn(id, "c" + id, TARGET, "start", at(6, 30), occupied, null, items);
  }

  private void features(Work w, int i, String role, boolean alone) {
    if (i > 1 && random.nextBoolean()) {
      w.after("i" + random.nextInt(i));
    }
    switch (random.nextInt(12)) {
      case 0 -> w.needs("scanner", 1, null);
      case 1 -> {
        // One a room: two held by rooms that each want another would wait for each other.
        if (!warmed) {
          w.needs("warmer", 1, "in");
          warmed = true;
        }
      }
      case 2 -> w.at("pharmacy");
      case 3 -> w.waits(about(4, 8)).oneIn(5, 10);
      case 4 -> w.by(role.equals("nurse") ? "technician" : "nurse");
      case 5 -> w.lives(25).gates("start");
      case 6 -> w.good(at(6, 40), null);
      case 7 -> w.inHand(at(6, 46), alone ? null : "t");
      case 8 -> w.fault(at(6, 45), exactly(9), List.of("technician"), null);
      case 9 -> w.inRoom().asked();
      case 10 -> w.notBefore(at(6, 58)).ofCase();
      default -> {
        // Nothing special.
      }
    }
  }
}
