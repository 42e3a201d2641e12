package sunup.sheets;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sunup.board.Role;
import sunup.board.Step;
import sunup.codec.Lined;
import sunup.codec.Problem;

/**
 * What every list holds before induction, whoever wrote the sheets: self-inflating bag, oxygen from
 * the wall and in reserve, suction, CO2, and a qualified person who checks. No addition, person or
 * site takes it away, makes it advisory or moves it behind induction.
 */
public final class UnwaivableCore {
  /** Keys, and what each stands for. */
  private static final Map<String, String> ITEMS = new LinkedHashMap<>();

  static {
    ITEMS.put("machine.bag", "self-inflating bag");
    ITEMS.put("machine.supplies", "oxygen supply");
    ITEMS.put("machine.cylinder", "oxygen in reserve");
    ITEMS.put("suction.strong", "suction");
    ITEMS.put("monitors.basic", "CO2 and the other basic monitors");
    ITEMS.put("start.check", "check by a qualified person");
  }

  private static final Set<Role> QUALIFIED =
      Set.of(Role.ANAESTHETIST, Role.TRAINEE, Role.SUPERVISOR);

  private UnwaivableCore() {}

  /** The keys, in sheet order. */
  public static List<String> keys() {
    return List.copyOf(ITEMS.keySet());
  }

  static boolean isCore(Lined item) {
    Lined core = item.fields().get("core");
    return core != null && "true".equals(core.text());
  }

  /** Says that an addition takes away what may never be left out, with both places. */
  static Problem taken(String key, String by, Lined take, Lined there) {
    return new Problem(
        take.file(),
        take.line(),
        key,
        "is taken away by '"
            + by
            + "' but may never be left out"
            + (ITEMS.containsKey(key) ? " (" + ITEMS.get(key) + ")" : "")
            + ", see "
            + there.where());
  }

  /** True if a change of this field takes from what is core. */
  static boolean weakens(String field, Lined value, Lined item) {
    if (field.equals("core")) {
      return !"true".equals(value.text());
    }
    if (!field.equals("gates")) {
      return false;
    }
    Lined before = item.fields().get("gates");
    Step was = before == null ? null : ItemReader.STEPS.get(before.text());
    Step becomes = ItemReader.STEPS.get(value.text());
    return becomes == null || (was != null && becomes.compareTo(was) > 0);
  }

  /** Finds what a whole list lacks. */
  static void check(Map<String, SheetItem> items, Lined base, List<Problem> problems) {
    for (Map.Entry<String, String> each : ITEMS.entrySet()) {
      SheetItem item = items.get(each.getKey());
      String wrong = item == null ? "is missing" : wrong(item);
      if (wrong != null) {
        problems.add(
            new Problem(
                base.file(),
                base.line(),
                each.getKey(),
                wrong
                    + ": "
                    + each.getValue()
                    + " may never be left out; every list has it as core before induction"));
      }
    }
  }

  private static String wrong(SheetItem item) {
    if (!item.core()) {
      return "is not core";
    }
    if (item.gates() == null || item.gates().compareTo(Step.INDUCTION) > 0) {
      return "does not gate induction or a step before it";
    }
    boolean person = item.key().equals("start.check");
    return person && item.who().stream().noneMatch(QUALIFIED::containsAll)
        ? "takes nobody of the anaesthetic team"
        : null;
  }
}
