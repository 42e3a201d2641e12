package sunup.access;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import sunup.access.Known.PairedScreen;
import sunup.access.Known.SignedOn;
import sunup.board.Role;
import sunup.board.RoomId;
import sunup.board.SuiteId;
import sunup.wire.AccessAsk;
import sunup.wire.AccessList;

/** What is asked about screens and people: who may, and what is done. Nobody unsigned may. */
final class Managing {
  /** Wrong codes typed at a screen within {@link Access#CODE_MS}. */
  static final int WRONG_CODES_MAX = 5;

  private static final Set<Role> DESKS = EnumSet.of(Role.DESK, Role.ADMIN);
  private static final Set<Role> ADMINS = EnumSet.of(Role.ADMIN);
  private static final Set<Role> ANYBODY =
      EnumSet.complementOf(EnumSet.of(Role.DISPLAY, Role.MANAGER));

  private final Access access;
  private final Ledger ledger;

  /** Of each screen; used by the store's thread only. */
  private final Map<String, Wrong> wrongCodes = new HashMap<>();

  private record Wrong(int count, long since) {}

  /**
   * What came of it.
   *
   * @param list what there is then, or null
   */
  record Done(String words, AccessList list) {}

  Managing(Access access) {
    this.access = access;
    this.ledger = access.ledger();
  }

  /** The table of roles by what is asked; all but the last two are asked at a desk. */
  static Set<Role> who(AccessAsk ask) {
    if (ask instanceof AccessAsk.SetPerson || ask instanceof AccessAsk.EndPerson) {
      return ADMINS;
    }
    if (ask instanceof AccessAsk.NewPin pin) {
      return pin.old() == null ? ADMINS : EnumSet.allOf(Role.class);
    }
    return ask instanceof AccessAsk.Lift ? ANYBODY : DESKS;
  }

  private static boolean anywhere(AccessAsk ask) {
    return ask instanceof AccessAsk.Lift
        || (ask instanceof AccessAsk.NewPin pin && pin.old() != null);
  }

  CompletableFuture<Done> ask(PairedScreen at, AccessAsk ask) {
    Optional<SignedOn> by = ledger.known().signedAt(at.id(), ledger.now());
    if (by.isEmpty()) {
      return Access.failed(new Refusal("Sign on first: this is asked of a person."));
    }
    if (!who(ask).contains(by.get().role())) {
      return Access.failed(
          new Refusal(
              who(ask).equals(ADMINS)
                  ? "That is for an administrator to do."
                  : "That is for the desk or an administrator to do."));
    }
    if (at.page() != Page.DESK && !anywhere(ask)) {
      return Access.failed(new Refusal("That is done at a desk."));
    }
    return carryOut(at, by.get(), ask)
        .thenApply(
            done ->
                at.page() == Page.DESK && done.list() == null
                    ? new Done(done.words(), list(at.suite(), null))
                    : done);
  }

  private CompletableFuture<Done> carryOut(PairedScreen at, SignedOn by, AccessAsk ask) {
    if (ask instanceof AccessAsk.LookUp look) {
      return ledger.inStore(c -> lookedUp(at, asks(c, at, look.code())));
    }
    if (ask instanceof AccessAsk.Pair pair) {
      return ledger.change(c -> paired(c, at, by, pair));
    }
    if (ask instanceof AccessAsk.Revoke revoke) {
      return ledger.change(c -> revoked(c, at, by, revoke.screen()));
    }
    if (ask instanceof AccessAsk.SetPerson add) {
      return addPerson(at, by, add);
    }
    if (ask instanceof AccessAsk.NewPin pin) {
      return newPin(at, by, pin);
    }
    if (ask instanceof AccessAsk.EndPerson end) {
      return ledger.change(c -> ended(c, by, end.person()));
    }
    if (ask instanceof AccessAsk.Lift lift) {
      return ledger.change(c -> lifted(c, at, by, lift));
    }
    return CompletableFuture.completedFuture(new Done("", null));
  }

  private Pairings.Asks asks(Connection c, PairedScreen at, String code)
      throws SQLException, Refusal {
    long now = ledger.now();
    Wrong before = wrongCodes.get(at.id());
    int wrong = before == null || now - before.since() > Access.CODE_MS ? 0 : before.count();
    if (wrong >= WRONG_CODES_MAX) {
      throw new Refusal("Too many codes that no screen shows were typed here. Wait five minutes.");
    }
    Pairings.Asks asks = Pairings.shown(c, Secrets.plain(code), now);
    if (asks == null) {
      wrongCodes.put(at.id(), new Wrong(wrong + 1, now));
      throw new Refusal(
          "No screen shows this code now. A code counts five minutes and once: look at the screen"
              + " again. Tries left here: "
              + (WRONG_CODES_MAX - wrong - 1)
              + ".");
    }
    return asks;
  }

  private Done lookedUp(PairedScreen at, Pairings.Asks asks) {
    return new Done(
        "It is asked from " + asks.address() + ". Is that the screen that you see?",
        list(at.suite(), asks));
  }

  private Done paired(Connection c, PairedScreen at, SignedOn by, AccessAsk.Pair pair)
      throws SQLException, Refusal {
    Page page =
        Page.named(pair.page())
            .orElseThrow(
                () -> new Refusal("A screen is a wall, desk, station, holding or pocket."));
    SuiteId suite = suite(at, by, pair.suite());
    RoomId room = page == Page.STATION ? pair.room() : null;
    if (page == Page.STATION && (room == null || !access.suites().get(suite).contains(room))) {
      throw new Refusal("Say of which room the station is: the suite has no room " + room + ".");
    }
    Pairings.Asks asks = asks(c, at, pair.code());
    wrongCodes.remove(at.id());
    PairedScreen made = access.paired(c, asks.fingerprint(), page, suite, room, by.person());
    return new Done("It is " + made.name() + " now.", null);
  }

  private SuiteId suite(PairedScreen at, SignedOn by, String asked) throws Refusal {
    if (asked == null || asked.equals(at.suite().value())) {
      return at.suite();
    }
    Known.Person person = ledger.known().people().get(by.person());
    for (SuiteId suite : access.suites().keySet()) {
      if (suite.value().equals(asked) && person != null && person.may(suite, by.role())) {
        return suite;
      }
    }
    throw new Refusal("There is no suite " + asked + " here that you may add screens to.");
  }

  private Done revoked(Connection c, PairedScreen at, SignedOn by, String screen)
      throws SQLException, Refusal {
    PairedScreen gone = ofSuite(at, screen);
    AccessStore.revoke(c, gone.id(), by.person(), ledger.now());
    return new Done(gone.name() + " is none of ours any more.", null);
  }

  private PairedScreen ofSuite(PairedScreen at, String screen) throws Refusal {
    PairedScreen found = ledger.known().screens().get(screen);
    if (found == null || !found.suite().equals(at.suite())) {
      throw new Refusal("This suite has no such screen any more.");
    }
    return found;
  }

  private CompletableFuture<Done> addPerson(PairedScreen at, SignedOn by, AccessAsk.SetPerson add) {
    String wrong = add.pin() == null ? null : Pins.wrong(add.pin());
    boolean known = ledger.known().people().containsKey(add.code());
    if (wrong != null || (add.pin() == null && !known)) {
      return Access.failed(new Refusal(wrong != null ? wrong : "Somebody new needs a first PIN."));
    }
    if (add.code().equals(by.person()) && !add.roles().contains(by.role())) {
      return Access.failed(
          new Refusal("You would shut yourself out. Let another administrator do that."));
    }
    CompletableFuture<Pins.Kept> kept =
        add.pin() == null
            ? CompletableFuture.completedFuture(null)
            : ledger.hash(() -> access.pins().keep(add.pin()));
    return kept.thenCompose(
        pin ->
            ledger.change(
                c -> {
                  Access.checkCode(add.code());
                  long now = ledger.now();
                  if (pin != null) {
                    mustAnswerFor(by, add.code());
                    AccessStore.addPerson(c, add.code(), pin, by.person(), now);
                  }
                  Set<Role> roles = new HashSet<>(add.roles());
                  AccessStore.spreadRoles(c, add.code(), access.suites().keySet());
                  AccessStore.setRoles(c, add.code(), at.suite().value(), roles);
                  stillAdministered(c);
                  boolean another = !add.code().equals(by.person());
                  if (another && pin != null) {
                    AccessStore.signOffEverywhere(c, add.code(), now);
                  } else if (another) {
                    // At another suite nothing changed.
                    AccessStore.signOffIn(c, add.code(), at.suite(), now);
                  }
                  return new Done(add.code() + " may sign on.", null);
                }));
  }

  private CompletableFuture<Done> newPin(PairedScreen at, SignedOn by, AccessAsk.NewPin ask) {
    String wrong = Pins.wrong(ask.pin());
    if (wrong != null) {
      return Access.failed(new Refusal(wrong));
    }
    boolean own = ask.old() != null;
    if (own && at.own()) {
      // Wrong PINs lock a person at a screen, and one's own browser is another screen each time.
      return Access.failed(new Refusal("PINs are changed at the site's screens."));
    }
    if (own != ask.person().equals(by.person())) {
      return Access.failed(
          new Refusal("Your own PIN is changed with your present one, and no other with yours."));
    }
    CompletableFuture<Void> may =
        own
            ? access.checkPin(at, ask.person(), ask.old())
            : CompletableFuture.completedFuture(null);
    return may.thenCompose(v -> ledger.hash(() -> access.pins().keep(ask.pin())))
        .thenCompose(
            kept ->
                ledger.change(
                    c -> {
                      if (!ledger.known().people().containsKey(ask.person())
                          || !AccessStore.setPin(c, ask.person(), kept)) {
                        throw new Refusal("There is nobody of this code.");
                      }
                      // Whoever knew the old one may be signed on somewhere by it.
                      if (own) {
                        AccessStore.signOffElsewhere(c, ask.person(), by.id(), ledger.now());
                      } else {
                        mustAnswerFor(by, ask.person());
                        AccessStore.signOffEverywhere(c, ask.person(), ledger.now());
                      }
                      return new Done("The PIN of " + ask.person() + " is changed.", null);
                    }));
  }

  private Done ended(Connection c, SignedOn by, String person) throws SQLException, Refusal {
    if (person.equals(by.person())) {
      throw new Refusal("You would shut yourself out. Let another administrator do that.");
    }
    if (!ledger.known().people().containsKey(person)) {
      throw new Refusal("There is nobody of this code.");
    }
    mustAnswerFor(by, person);
    AccessStore.endPerson(c, person, ledger.now());
    stillAdministered(c);
    return new Done(person + " may not sign on any more.", null);
  }

  /**
   * Refuses what counts in all suites, another PIN or an end, unless it is asked by an
   * administrator of each suite in which that person is something: whoever sets a PIN can sign on
   * by it.
   */
  private void mustAnswerFor(SignedOn by, String person) throws Refusal {
    Known.Person asked = ledger.known().people().get(person);
    Known.Person admin = ledger.known().people().get(by.person());
    for (SuiteId suite : access.suites().keySet()) {
      boolean there = asked != null && !roles(asked, suite).isEmpty();
      if (there && (admin == null || !admin.may(suite, Role.ADMIN))) {
        throw new Refusal(
            person
                + " has roles in suite "
                + suite
                + ", which you do not administer. An administrator of all suites of that person"
                + " does this; roles in your own suite can be changed without a PIN.");
      }
    }
  }

  /** Refuses a change after which a suite that has an administrator has none. */
  private void stillAdministered(Connection c) throws SQLException, Refusal {
    Known after = AccessStore.read(c, ledger.now());
    for (SuiteId suite : access.suites().keySet()) {
      if (administered(ledger.known(), suite) && !administered(after, suite)) {
        throw new Refusal("Suite " + suite + " would have no administrator. Name another first.");
      }
    }
  }

  private static boolean administered(Known all, SuiteId suite) {
    return all.people().values().stream().anyMatch(p -> p.may(suite, Role.ADMIN));
  }

  private Done lifted(Connection c, PairedScreen at, SignedOn by, AccessAsk.Lift lift)
      throws SQLException, Refusal {
    if (lift.person().equals(by.person())) {
      throw new Refusal("A colleague has to do that.");
    }
    PairedScreen where = lift.screen() == null ? at : ofSuite(at, lift.screen());
    PinTries.forgetTries(c, lift.person(), where.id());
    return new Done(lift.person() + " may try again at " + where.name() + ".", null);
  }

  private AccessList list(SuiteId suite, Pairings.Asks asks) {
    Known all = ledger.known();
    List<AccessList.ScreenRow> screens =
        all.screens().values().stream()
            .filter(s -> s.suite().equals(suite))
            .sorted(Comparator.comparing(PairedScreen::name))
            .map(s -> row(all, s))
            .toList();
    List<AccessList.PersonRow> people =
        all.people().values().stream()
            .sorted(Comparator.comparing(Known.Person::code))
            .map(p -> new AccessList.PersonRow(p.code(), roles(p, suite)))
            .toList();
    List<AccessList.LockRow> locks =
        all.locks().stream()
            .filter(l -> all.screens().containsKey(l.screen()))
            .filter(l -> all.screens().get(l.screen()).suite().equals(suite))
            .map(
                l ->
                    new AccessList.LockRow(
                        l.person(), l.screen(), all.screens().get(l.screen()).name()))
            .toList();
    AccessList.AsksRow row =
        asks == null
            ? null
            : new AccessList.AsksRow(
                asks.code(), asks.address(), asks.page(), asks.at(), asks.until());
    return new AccessList(screens, people, locks, row);
  }

  private static List<Role> roles(Known.Person person, SuiteId suite) {
    Set<Role> roles = EnumSet.noneOf(Role.class);
    for (Role role : Role.values()) {
      if (person.may(suite, role)) {
        roles.add(role);
      }
    }
    return List.copyOf(roles);
  }

  private AccessList.ScreenRow row(Known all, PairedScreen s) {
    return new AccessList.ScreenRow(
        s.id(),
        s.name(),
        s.page().word(),
        s.room(),
        s.pairedAt(),
        s.pairedBy(),
        access.sockets(s.id()),
        all.signedAt(s.id(), ledger.now()).map(SignedOn::person).orElse(null));
  }
}
