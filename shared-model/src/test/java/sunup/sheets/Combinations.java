package sunup.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Which standard sheets don't go together, told apart from the sheets themselves. */
final class Combinations {
  private static final Set<String> WITHOUT_TUBE =
      Set.of("spinal", "epidural", "sedation", "supraglottic");

  /** Each name with those that it may not stand beside. */
  private static final Map<String, Set<String>> NOT_WITH =
      Map.of(
          "rapid-sequence",
          WITHOUT_TUBE,
          "one-lung",
          WITHOUT_TUBE,
          "cardiac",
          WITHOUT_TUBE,
          "prone",
          Set.of("supraglottic"),
          "obstetric-emergency",
          Set.of("sedation", "supraglottic", "child", "mri", "prone", "one-lung", "cardiac"),
          "mri",
          Set.of("imaging", "special-table", "prone", "one-lung", "cardiac", "blood-loss"));

  private Combinations() {}

  static boolean goTogether(String technique, List<String> options) {
    List<String> all = new ArrayList<>(options);
    all.add(technique);
    for (String one : all) {
      for (String other : all) {
        if (NOT_WITH.getOrDefault(one, Set.of()).contains(other)) {
          return false;
        }
      }
    }
    return true;
  }
}
