package sunup.board;

import java.util.ArrayList;
import java.util.List;
import sunup.board.EvidenceCheck.Verdict;
import sunup.board.Morning.CaseDay;
import sunup.board.Morning.RoomDay;
import sunup.board.Outcome.Refused;
import sunup.sheets.EvidenceRule;
import sunup.sheets.SheetItem;

/** What is observed of items. Accepted whatever happened meanwhile: at most kept without effect. */
final class ItemRules {
  static final String LATE_ENTRY = "late-entry";

  private ItemRules() {}

  static Outcome begin(Ask ask, Command.Begin c) {
    PersonId by = ask.doer(c.by());
    Refused refused = meets(ask, c.item(), CommandKind.BEGIN, by);
    if (refused != null) {
      return refused;
    }
    Kept kept = kept(ask, c.item());
    if (kept == null) {
      kept =
          switch (ask.morning.stateOf(c.item(), ask.at)) {
            case OPEN, LAPSED -> null;
            case IN_HAND -> Kept.IN_HAND;
            case GOOD -> Kept.GOOD;
            case FAULT -> Kept.FAULT;
            case LEFT_OUT -> Kept.LEFT_OUT;
          };
    }
    return ask.accept(
        kept == null
            ? new Event.ItemBegun(c.item(), by)
            : new Event.WordKept(c.item(), kept.code()));
  }

  static Outcome good(Ask ask, Command.Good c) {
    PersonId by = ask.doer(c.by());
    Refused refused =
        Ask.first(meets(ask, c.item(), CommandKind.GOOD, by), ask.unknown(c.witness()));
    if (refused != null) {
      return refused;
    }
    SheetItem sheet = ask.morning.sheetItem(c.item());
    if (sheet == null) {
      return ask.accept(new Event.WordKept(c.item(), Kept.NOT_ASKED.code()));
    }
    Verdict verdict = EvidenceCheck.check(ask, sheet, c.evidence());
    if (verdict.refused() != null) {
      return verdict.refused();
    }
    if (verdict.fault()) {
      return fault(ask, c.item(), null, verdict.evidence());
    }
    Refused unsigned = EvidenceCheck.signatures(ask, sheet, by, c.witness());
    if (unsigned != null) {
      return unsigned;
    }
    Kept kept = kept(ask, c.item());
    if (kept != null) {
      return ask.accept(new Event.WordKept(c.item(), kept.code()));
    }
    if (ask.morning.stateOf(c.item(), ask.at) == ItemState.GOOD) {
      return ask.accept(new Event.ItemWitnessed(c.item(), verdict.evidence(), by));
    }
    return madeGood(ask, sheet, c, verdict.evidence(), by);
  }

  private static Outcome madeGood(
      Ask ask, SheetItem sheet, Command.Good c, Evidence evidence, PersonId by) {
    List<Event> events = new ArrayList<>();
    RoomId room = ask.morning.roomOf(c.item());
    if (evidence instanceof Evidence.Scan scan) {
      events.addAll(ThingRules.taken(ask, scan.unit(), room));
    }
    events.add(new Event.ItemGood(c.item(), evidence, by, c.witness(), flags(ask, c.item(), room)));
    CaseDay day = ask.morning.caseOf(c.item());
    if (sheet.marks() != null && !day.steps().containsKey(sheet.marks())) {
      events.add(StartRules.reached(ask, day, sheet.marks()));
    }
    return ask.accept(events);
  }

  static List<String> flags(Ask ask, ItemRef item, RoomId room) {
    List<String> flags = new ArrayList<>();
    if (Recorded.isLateEntry(ask.at, ask.now)) {
      flags.add(LATE_ENTRY);
    }
    RoomDay day = ask.morning.rooms().get(room);
    if (day != null
        && TogetherRule.isTogether(
            TogetherRule.after(day.entered(), new Morning.Entered(item, ask.at)))) {
      flags.add(TogetherRule.FLAG);
    }
    return flags;
  }

  static Outcome sweep(Ask ask, Command.Sweep c) {
    PersonId by = ask.doer(c.by());
    Refused refused =
        Ask.first(ask.unknown(c.room()), ask.unknown(by), Rights.checkRoom(ask, c.room()));
    if (refused != null) {
      return refused;
    }
    NextCase next = ask.morning.next().get(c.next());
    if (c.next() != null && (next == null || !next.room().equals(c.room()))) {
      return Ask.unknownUnless(false, "next case", c.next());
    }
    List<ItemRef> items = new ArrayList<>();
    Refused notTheirs = null;
    for (Placed placed : next == null ? ask.morning.itemsOf(c.room()) : next.items(ask.morning)) {
      if (placed.sheet().section() == c.section() && isSwept(ask, placed, c.except())) {
        if (Rights.mayTouch(ask.role(), placed.sheet(), CommandKind.SWEEP)) {
          items.add(placed.ref());
        } else {
          notTheirs = Rights.checkItem(ask, placed.ref(), CommandKind.SWEEP);
        }
      }
    }
    if (items.isEmpty()) {
      return notTheirs != null ? notTheirs : ask.accept();
    }
    return ask.accept(new Event.SectionSwept(c.room(), c.section(), List.copyOf(items), by));
  }

  /** A sweep takes what a look is enough for; readings, choices, tags and signatures it leaves. */
  private static boolean isSwept(Ask ask, Placed placed, List<ItemRef> except) {
    EvidenceRule rule = placed.sheet().evidence();
    boolean aLookIsEnough =
        rule.kind() == EvidenceRule.Kind.TOUCH
            && !rule.witness()
            && placed.sheet().marks() == null
            && !placed.sheet().isArrival();
    if (!aLookIsEnough || except.contains(placed.ref()) || kept(ask, placed.ref()) != null) {
      return false;
    }
    ItemState state = ask.morning.stateOf(placed, ask.at);
    return state == ItemState.OPEN || state == ItemState.IN_HAND || state == ItemState.LAPSED;
  }

  static Outcome fault(Ask ask, Command.Fault c) {
    Refused refused = meets(ask, c.item(), CommandKind.FAULT, null);
    return refused != null ? refused : fault(ask, c.item(), c.what(), null);
  }

  private static Outcome fault(Ask ask, ItemRef ref, Private what, Evidence reading) {
    Kept kept = kept(ask, ref);
    Item item = ask.morning.item(ref);
    if (kept == null && item.state() == ItemState.FAULT && what == null && reading == null) {
      kept = Kept.FAULT;
    }
    return ask.accept(
        kept == null
            ? new Event.ItemFaulted(ref, what, reading)
            : new Event.WordKept(ref, kept.code()));
  }

  static Outcome mend(Ask ask, Command.Mend c) {
    Refused refused = meets(ask, c.item(), CommandKind.MEND, null);
    if (refused != null) {
      return refused;
    }
    Kept kept = kept(ask, c.item());
    if (kept == null && ask.morning.item(c.item()).state() != ItemState.FAULT) {
      kept = Kept.NO_FAULT;
    }
    return ask.accept(
        kept == null ? new Event.ItemMended(c.item()) : new Event.WordKept(c.item(), kept.code()));
  }

  /** A refusal if there is no such item or person or this actor may not speak of it, else null. */
  static Refused meets(Ask ask, ItemRef item, CommandKind kind, PersonId by) {
    Refused unknown = Ask.first(ask.unknown(item), ask.unknown(by));
    return unknown != null ? unknown : Rights.checkItem(ask, item, kind);
  }

  /** Why an observation of an item has no effect whatever it says, or null. */
  static Kept kept(Ask ask, ItemRef ref) {
    Item item = ask.morning.item(ref);
    CaseDay day = ask.morning.caseOf(ref);
    if (ref.caseId() != null && day != null && day.cancelled()) {
      return Kept.CASE_CANCELLED;
    }
    if (ask.morning.sheetItem(ref) == null) {
      return Kept.NOT_ASKED;
    }
    if (item.state() == ItemState.LEFT_OUT) {
      return Kept.LEFT_OUT;
    }
    return item.notBefore() != null && ask.at < item.notBefore() ? Kept.OLDER : null;
  }
}
