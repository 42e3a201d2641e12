package sunup.drugs;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Names that look alike, with the letters in capitals that tell them apart. Sources: FDA and ISMP,
 * Lists of Look-Alike Drug Names with Recommended Tall Man Letters, those names of it that are met
 * in theatre; suxamethonium and beta blockers as ASTM D4774-11 prints them. For how names look
 * only: the spelling stays the one on the approved list.
 */
public final class Lettering {
  /**
   * Names that are taken for each other.
   *
   * @param names with their capitals
   * @param source of the capitals
   */
  public record Alike(List<String> names, String source) {
    public Alike {
      names = List.copyOf(names);
    }
  }

  private static final String FDA = "FDA list of the Name Differentiation Project";
  private static final String ISMP = "ISMP list of additional names";
  private static final String ASTM = "ASTM D4774-11 (withdrawn 2022), reversed plates";

  /** All sets. */
  public static final List<Alike> ALIKE =
      List.of(
          new Alike(List.of("DOBUTamine", "DOPamine"), FDA),
          new Alike(List.of("hydrALAZINE", "hydrOXYzine"), FDA),
          new Alike(List.of("niCARdipine", "NIFEdipine"), FDA),
          new Alike(List.of("dimenhyDRINATE", "diphenhydrAMINE"), FDA),
          new Alike(List.of("ePHEDrine", "EPINEPHrine"), ISMP),
          new Alike(List.of("fentaNYL", "SUFentanil"), ISMP),
          new Alike(List.of("HYDROmorphone", "morphine"), ISMP),
          new Alike(List.of("ceFAZolin", "cefTRIAXone"), ISMP),
          new Alike(List.of("clonazePAM", "cloNIDine", "LORazepam"), ISMP),
          new Alike(List.of("niMODipine", "NIFEdipine"), ISMP),
          new Alike(List.of("PENTobarbital", "PHENobarbital"), ISMP),
          new Alike(List.of("ESMOlol", "LABATolol", "METOprolol"), ASTM),
          new Alike(List.of("SUCCINYLcholine"), ASTM));

  private static final Map<String, String> SHOWN = new HashMap<>();
  private static final Map<String, List<String>> TAKEN_FOR = new HashMap<>();

  static {
    for (Alike alike : ALIKE) {
      for (String name : alike.names()) {
        String plain = name.toLowerCase(Locale.ROOT);
        SHOWN.put(plain, name);
        List<String> others = TAKEN_FOR.computeIfAbsent(plain, p -> new ArrayList<>());
        for (String other : alike.names()) {
          if (!other.equals(name) && !others.contains(other)) {
            others.add(other);
          }
        }
      }
    }
  }

  private Lettering() {}

  /** The name with its capitals, or as it is if it is on no list. */
  public static String shown(String name) {
    return SHOWN.getOrDefault(name.toLowerCase(Locale.ROOT), name);
  }

  /** Names that this one is taken for, with their capitals. */
  public static List<String> alike(String name) {
    return List.copyOf(TAKEN_FOR.getOrDefault(name.toLowerCase(Locale.ROOT), List.of()));
  }
}
