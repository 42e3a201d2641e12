package sunup.intake;

import java.util.List;
import java.util.regex.Pattern;

/**
 * Text that seems to hold somebody's name, number or date of birth. It finds what lists hold by
 * mistake; it can't know every name, so that those who make the list stay responsible for it.
 */
final class Identifying {
  /** As many digits as a hospital's or an insurance number has, with or without gaps. */
  private static final Pattern NUMBER = Pattern.compile("\\d(?:[ .-]?\\d){6}");

  private static final List<Pattern> OTHERS =
      List.of(
          // A date; lists name the day elsewhere.
          Pattern.compile("\\b\\d{1,4}[./-]\\d{1,2}[./-]\\d{2,4}\\b"),
          Pattern.compile(
              "\\b(?:mrn|nhs no|ssn|dob|date of birth|born|surname|forename)\\b",
              Pattern.CASE_INSENSITIVE),
          Pattern.compile(
              "\\b(?:Mr|Mrs|Ms|Miss|Mister|Herr|Frau|Mme|Monsieur|Madame|Sr|Sra|Sig)\\b"
                  + "\\.? \\p{Lu}"),
          // SURNAME, Forename
          Pattern.compile("^\\p{Lu}[\\p{Lu}'-]+, ?\\p{Lu}\\p{Ll}+"));

  private Identifying() {}

  static boolean number(String text) {
    return NUMBER.matcher(text).find();
  }

  static boolean seems(String text) {
    return number(text) || OTHERS.stream().anyMatch(each -> each.matcher(text).find());
  }
}
