package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;

/** What a person or a screen is on this morning. A person has one role at a time. */
public enum Role {
  @JsonProperty("anaesthetist")
  ANAESTHETIST,
  @JsonProperty("supervisor")
  SUPERVISOR,
  @JsonProperty("trainee")
  TRAINEE,
  @JsonProperty("technician")
  TECHNICIAN,
  @JsonProperty("circulating")
  CIRCULATING,
  @JsonProperty("scrub")
  SCRUB,
  @JsonProperty("surgeon")
  SURGEON,
  @JsonProperty("holding")
  HOLDING,
  @JsonProperty("porter")
  PORTER,
  @JsonProperty("cleaner")
  CLEANER,
  @JsonProperty("pharmacy")
  PHARMACY,
  @JsonProperty("desk")
  DESK,
  @JsonProperty("manager")
  MANAGER,
  @JsonProperty("admin")
  ADMIN,
  @JsonProperty("display")
  DISPLAY;

  /** The role as it is written on the wire and in sheets. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
