package sunup.board;

import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * Where an item stands. The first seven are the anaesthetist's own sections in the trade's order
 * (M-S-M-A-I-D-S); the others are the tracks beside them.
 */
public enum Section {
  @JsonProperty("machine")
  MACHINE,
  @JsonProperty("suction")
  SUCTION,
  @JsonProperty("monitors")
  MONITORS,
  @JsonProperty("airway")
  AIRWAY,
  @JsonProperty("iv")
  IV,
  @JsonProperty("drugs")
  DRUGS,
  @JsonProperty("special")
  SPECIAL,
  @JsonProperty("room")
  ROOM,
  @JsonProperty("instruments")
  INSTRUMENTS,
  @JsonProperty("patient")
  PATIENT,
  @JsonProperty("surgeon")
  SURGEON,
  @JsonProperty("team")
  TEAM,
  @JsonProperty("start")
  START;

  public boolean isSetUp() {
    return compareTo(SPECIAL) <= 0;
  }

  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
