package sunup.forecast;

import static sunup.forecast.Mornings.MINUTE;
import static sunup.forecast.Mornings.about;
import static sunup.forecast.Mornings.at;
import static sunup.forecast.Mornings.exactly;
import static sunup.forecast.Mornings.item;
import static sunup.forecast.Mornings.person;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.PlaceIn;
import sunup.forecast.ForecastInput.RoomIn;
import sunup.forecast.ForecastInput.Settings;
import sunup.forecast.ForecastInput.Silence;
import sunup.forecast.Mornings.Person;
import sunup.forecast.Mornings.Work;

/** Random mornings for the comparison with the second simulation; counts what is in them. */
final class EveryFeature {
  static final long NOW = at(6, 50);
  private static final String[] ROLES = {"anaesthetist", "nurse", "technician", "supervisor"};

  private final Random random;
  private final Map<String, Integer> seen;

  private EveryFeature(long seed, Map<String, Integer> seen) {
    random = new Random(seed * 31 + 7);
    this.seen = seen;
  }

  static ForecastInput of(long seed, int trials, Map<String, Integer> seen) {
    return new EveryFeature(seed, seen).morning(seed, trials);
  }

  private boolean one(int in, String feature) {
    boolean yes = random.nextInt(in) == 0;
    if (yes) {
      seen.merge(feature, 1, Integer::sum);
    }
    return yes;
  }

  private ForecastInput morning(long seed, int trials) {
    int rooms = 2 + random.nextInt(3);
    List<RoomIn> list = new ArrayList<>();
    List<PersonIn> people = new ArrayList<>();
    for (int r = 1; r <= rooms; r++) {
      String id = "r" + r;
      list.add(room(id));
      people.add(own("a" + r, "anaesthetist", id));
      people.add(own("n" + r, "nurse", id));
    }
    people.add(roaming("t", "technician"));
    people.add(roaming("v", "supervisor"));
    if (random.nextBoolean()) {
      people.add(roaming("w", "supervisor", "technician"));
    }
    List<String> promised = one(3, "promise") ? List.of("r" + rooms) : List.of();
    seen.merge("person factor", 1, Integer::sum);
    return new ForecastInput(
        1,
        NOW,
        seed,
        trials,
        settings(),
        people,
        List.of(new KindIn("scanner", 1, promised), new KindIn("warmer", 2, List.of())),
        List.of(
            new PlaceIn("pharmacy", one(2, "place opens") ? at(7, 0) : at(6, 0), about(1, 2)),
            new PlaceIn("store", at(6, 0), exactly(1))),
        list);
  }

  private Settings settings() {
    Settings d = Settings.DEFAULT;
    Silence s = d.silence();
    Draw delay = one(2, "reporting delay") ? about(1, 3) : exactly(0);
    return new Settings(
        d.personShare(),
        one(3, "grace") ? 5 * MINUTE : 0,
        d.capMs(),
        d.forgottenTouch(),
        new Silence(
            s.eachItem(), s.eachSection(), s.atEnd(), s.never(), s.away(), s.awayFor(), delay));
  }

  private PersonIn own(String id, String role, String room) {
    Person p = person(id, role).in(room);
    if (one(8, "own person comes")) {
      return p.comes(NOW - 5 * MINUTE, about(6, 12)).build();
    }
    if (one(8, "own person comes unreported")) {
      return p.comes(NOW - 8 * MINUTE, about(4, 9)).unreported().build();
    }
    p.here(NOW - 20 * MINUTE);
    if (one(6, "huddle")) {
      p.away(at(7, 0), at(7, 6));
    }
    if (one(4, "silence")) {
      return p.spoke(NOW - (2 + random.nextInt(5)) * MINUTE).build();
    }
    return p.spoke(NOW).build();
  }

  private PersonIn roaming(String id, String... roles) {
    Person p = person(id, roles);
    if (one(4, "roaming person comes")) {
      p.comes(NOW - 3 * MINUTE, about(5, 11));
    } else {
      p.here(NOW - 15 * MINUTE).spoke(NOW);
    }
    if (one(5, "shift ends")) {
      p.leaves(at(8, 40));
    }
    if (one(5, "roaming huddle")) {
      p.away(at(7, 5), at(7, 12));
    }
    return p.build();
  }

  private RoomIn room(String id) {
    List<Work> works = new ArrayList<>();
    int n = 6 + random.nextInt(5);
    boolean holds = false;
    for (int i = 0; i < n; i++) {
      String role = ROLES[random.nextInt(ROLES.length)];
      Work w = item("i" + i).section("s" + i / 3).takes(duration()).by(role);
      w.gates(one(7, "advisory") ? null : random.nextBoolean() ? "sent-for" : "start");
      if (i > 1 && random.nextBoolean()) {
        w.after("i" + random.nextInt(i));
      }
      if (!holds && one(9, "equipment across items")) {
        holds = true;
        w.needs("warmer", 1, "in");
      } else {
        feature(w, role);
      }
      works.add(w);
    }
    boolean silent = one(2, "arrival that nobody reports");
    works.add(item("seen").comes(at(6, 30), about(25, 40), silent).gates("sent-for"));
    long target = at(7, 25) + 5L * random.nextInt(4) * MINUTE;
    works.add(item("sent").marks("sent-for").notBefore(target - 12 * MINUTE));
    works.add(
        item("in").marks("start").after("sent").by("nurse").takes(about(5, 9)).notBefore(target));
    boolean induction = one(2, "start is induction");
    works.add(
        item("induction")
            .marks("induction")
            .after("in")
            .by("anaesthetist")
            .by("supervisor")
            .takes(about(6, 13)));
    works.add(
        item("release").marks("release").after("induction").by("anaesthetist").takes(about(4, 14)));
    return new RoomIn(
        id,
        "c" + id,
        induction ? target + 14 * MINUTE : target,
        induction ? "induction" : "start",
        at(6, 30),
        one(7, "occupied") ? about(6, 12) : null,
        null,
        Mornings.items(works.toArray(new Work[0])));
  }

  private Draw duration() {
    double usual = 1 + random.nextInt(6);
    if (one(8, "exponential")) {
      return new Draw.Exponential(Math.round(usual * MINUTE));
    }
    if (one(8, "three-point")) {
      return new Draw.ThreePoint(
          Math.round(usual * 0.5 * MINUTE),
          Math.round(usual * MINUTE),
          Math.round(usual * 3 * MINUTE));
    }
    return about(usual, usual * (1.3 + random.nextDouble()));
  }

  private void feature(Work w, String role) {
    boolean roaming = role.equals("technician") || role.equals("supervisor");
    if (one(12, "equipment")) {
      w.needs("scanner", 1, null);
    } else if (one(10, "errand")) {
      w.at("pharmacy");
    } else if (one(12, "errand to the store")) {
      w.at("store");
    } else if (one(10, "waits")) {
      w.waits(about(4, 8));
    } else if (one(9, "rare extra")) {
      w.oneIn(5, 10);
    } else if (one(8, "step of two")) {
      w.by(role.equals("nurse") ? "technician" : "nurse");
    } else if (one(9, "lapse")) {
      w.lives(22).gates("start");
    } else if (one(10, "good")) {
      w.good(NOW - 10 * MINUTE, null);
    } else if (roaming && one(5, "in hand")) {
      w.inHand(NOW - 3 * MINUTE, null);
    } else if (one(12, "fault")) {
      w.fault(NOW - 5 * MINUTE, exactly(9), List.of("technician"), null);
    } else if (one(10, "held while occupied")) {
      w.inRoom();
    } else if (one(10, "asked")) {
      w.asked();
    } else if (one(10, "booked")) {
      w.notBefore(at(6, 58));
    }
  }
}
