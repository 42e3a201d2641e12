package sunup.live;

/** The line to the node that owns a morning. */
public interface Line {
  /** The node. */
  String node();

  /**
   * Asks to be told what its screens are told; to be asked again once a second.
   *
   * @param views whether everything is to be told anew
   */
  void follow(boolean views);
}
