package sunup.live;

import sunup.suites.Owner;

/** Where the owner of a morning is, as far as this node knows. */
public sealed interface Place {
  /** Here: this node draws the morning. */
  record Here(Owner owner) implements Place {}

  /** On another node, which draws it. */
  record There(Line line) implements Place {}

  /** Nobody is known to have it now. */
  record Nowhere() implements Place {}
}
