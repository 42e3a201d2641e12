package sunup.cluster;

import sunup.board.MorningId;
import sunup.live.Place;

/** The screens of this node, as the placement needs them. From any thread. */
interface Screens {
  /** Open sockets. */
  int open();

  /** The line on which the owner's node tells this one. */
  Place.There line(MorningId morning, String node);
}
