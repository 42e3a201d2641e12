package sunup.suites;

import sunup.board.MorningId;

/** The other nodes, as an owner needs them where several share the journal. */
public interface Company {
  /**
   * Told of a morning that another node took, or that this program can't read: {@link
   * Suites#release} it. On the executor.
   */
  void gone(MorningId morning);

  /** Whether all nodes say that they read a type of event that is not settled. On the executor. */
  boolean reads(String type);
}
