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
  MORNING_CLOSED("This morning is closed and takes nothing more. %s"),
  @JsonProperty("not-allowed")
  NOT_ALLOWED("This role may not do that. Ask %s."),
  @JsonProperty("unknown")
  UNKNOWN("This morning has no %s. Look at the board for what there is."),
  @JsonProperty("changed-meanwhile")
  CHANGED_MEANWHILE("It changed meanwhile: %s. Look again, then decide."),
  @JsonProperty("core")
  CORE("%s may not be left out: it belongs to the site's core."),
  @JsonProperty("evidence-missing")
  EVIDENCE_MISSING("%s"),
  @JsonProperty("out-of-range")
  OUT_OF_RANGE("%s"),
  @JsonProperty("same-person")
  SAME_PERSON("A second signature must be another person's: %s."),
  @JsonProperty("nothing-to-undo")
  NOTHING_TO_UNDO("There is nothing left to take back: %s."),
  @JsonProperty("case-cancelled")
  CASE_CANCELLED("The case in this room is cancelled. %s"),
  @JsonProperty("room-taken")
  ROOM_TAKEN("%s"),
  @JsonProperty("too-late")
  TOO_LATE("%s"),
  @JsonProperty("bad-plan")
  BAD_PLAN("%s"),
  @JsonProperty("no-reason")
  NO_REASON("No reason has been given yet for this case. %s"),
  @JsonProperty("id-reused")
  ID_REUSED("This command id was used for something else. Send it again under a new id. %s"),
  @JsonProperty("bad-command")
  BAD_COMMAND("The command can't be read: %s.");

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
