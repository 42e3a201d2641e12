package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * The one registry of refusals. Each has a code for programs and a sentence for people that says
 * what to do; {@code %s} is filled with the detail.
 */
public enum RefusalCode {
  @JsonProperty("not-planned")
  NOT_PLANNED("There is no morning planned for this date. Take a case list at the desk first. %s"),
  @JsonProperty("not-open")
  NOT_OPEN("This morning is a draft. Open it at the desk, then report. %s"),
  @JsonProperty("already-open")
  ALREADY_OPEN("This morning is open already; change single cases at the desk instead. %s"),
  @JsonProperty("morning-closed")
  MORNING_CLOSED(
      "This morning was closed over a week ago and takes nothing more. Keep a note on paper. %s"),
  @JsonProperty("not-allowed")
  NOT_ALLOWED("This role may not do that. Ask %s."),
  @JsonProperty("unknown")
  UNKNOWN("This morning has no %s. Look at the board for what there is."),
  @JsonProperty("changed-meanwhile")
  CHANGED_MEANWHILE("It changed meanwhile: %s. Look again, then decide."),
  @JsonProperty("core")
  CORE("%s is of the site's core and may not be left out. Do it, or say what is wrong with it."),
  @JsonProperty("not-safe")
  NOT_SAFE("Somebody called this move not safe: it stays off this morning. Ask what they see. %s"),
  @JsonProperty("evidence-missing")
  EVIDENCE_MISSING("%s"),
  @JsonProperty("out-of-range")
  OUT_OF_RANGE("%s"),
  @JsonProperty("same-person")
  SAME_PERSON("That must be another person: %s. Choose somebody else."),
  @JsonProperty("second-unsigned")
  SECOND_UNSIGNED("%s did not sign, or longer than a minute ago. Ask for code and PIN again."),
  @JsonProperty("nothing-to-undo")
  NOTHING_TO_UNDO("There is nothing left to take back: %s. Say how it stands now."),
  @JsonProperty("case-cancelled")
  CASE_CANCELLED("There is no case here that takes place: look at the board. %s"),
  @JsonProperty("room-taken")
  ROOM_TAKEN("%s"),
  @JsonProperty("too-late")
  TOO_LATE("%s"),
  @JsonProperty("bad-plan")
  BAD_PLAN("%s"),
  @JsonProperty("no-reason")
  NO_REASON("No reason has been given yet for this case: give one first. %s"),
  @JsonProperty("package-refused")
  PACKAGE_REFUSED("Do not use this package: %s. Take another."),
  @JsonProperty("package-stop")
  PACKAGE_STOP(
      "Stop: %s. Take another, or say why this one is used; a second person then signs too."),
  @JsonProperty("id-reused")
  ID_REUSED("This command id was used for something else. Send it again under a new id. %s"),
  @JsonProperty("bad-command")
  BAD_COMMAND("The command can't be read: %s. Send it again, complete.");

  private final String sentence;

  RefusalCode(String sentence) {
    this.sentence = sentence;
  }

  /** The sentence for people, filled. */
  public String say(String detail) {
    return String.format(sentence, detail == null ? "" : detail).strip();
  }

  /** The code for programs. */
  public String code() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
