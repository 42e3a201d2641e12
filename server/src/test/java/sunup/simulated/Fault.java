package sunup.simulated;

import java.util.Locale;

/**
 * One thing that goes wrong in a history of several nodes.
 *
 * @param at when, milliseconds from the beginning
 * @param lasts for how long
 * @param node whom it hits, by number; {@link #OWNER} for the one that has the morning then
 * @param other the other end of a line, or the same node
 * @param how a variant, by kind
 */
record Fault(Kind kind, long at, long lasts, int node, int other, int how) {
  /** Whoever has the morning when it begins. */
  static final int OWNER = -1;

  enum Kind {
    /** Messages to and from a node are lost, one in three. */
    DROP,
    /** They come twice, one in three. */
    DOUBLE,
    /** They take up to three seconds, in order. */
    DELAY,
    /** One in three overtakes those before it. */
    REORDER,
    /** The process dies where its journal's writer is as {@code how} says. */
    CRASH,
    /** All processes die at once. */
    POWER,
    /** The process stands still and goes on. */
    PAUSE,
    /** A node is cut off from the others; how: lost, or held and delivered late. */
    SPLIT,
    /** Nothing comes from the node to the other one; how as above. */
    ONE_WAY,
    /** The node's questions to the journal are refused. */
    NO_DISK,
    /** They are not answered until the fault ends. */
    SILENT_DISK,
    /** They take long. */
    SLOW_DISK,
    /** The next commit ends in doubt and was written. */
    COMMIT_WRITTEN,
    /** The next commit ends in doubt and was lost. */
    COMMIT_LOST,
    /** The next commit ends in doubt and is written a while later. */
    COMMIT_LATER,
    /** The next write fails for sure. */
    WRITE_FAILS,
    /** The next take-over fails. */
    TAKE_FAILS,
    /** The next take-over happens and nobody is told. */
    TAKE_IN_DOUBT,
    /** The hands of a node's clock jump and are set right at the end. */
    CLOCK,
    /** The node is shut down in order and started again. */
    LEAVE,
    /**
     * What goes between a node and its screens comes late; how: all at the end, or now and then.
     */
    SCREENS;

    /** Hits the next commit, write or take-over, and no other. */
    boolean once() {
      return switch (this) {
        case COMMIT_WRITTEN, COMMIT_LOST, COMMIT_LATER, WRITE_FAILS, TAKE_FAILS, TAKE_IN_DOUBT ->
            true;
        default -> false;
      };
    }

    String words() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  long ends() {
    return at + lasts;
  }

  boolean on(long now) {
    return now >= at && now < ends();
  }

  Fault lasting(long shorter) {
    return new Fault(kind, at, shorter, node, other, how);
  }

  Fault beginning(long when, long lasting) {
    return new Fault(kind, when, lasting, node, other, how);
  }

  /** The same at this node; what it is cut off from is another one. */
  Fault at(int index) {
    int end = other == index ? (index + 1) % Script.NODES : other;
    return new Fault(kind, at, lasts, index, end, how);
  }

  @Override
  public String toString() {
    String where = kind == Kind.ONE_WAY ? node + " to " + other : Integer.toString(node);
    return kind.words() + " at node " + where + " from " + at + " to " + ends() + " ms, way " + how;
  }
}
