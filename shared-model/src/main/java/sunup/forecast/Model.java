package sunup.forecast;

/**
 * One component compiled to arrays. Moments are milliseconds after now. Items stand room by room in
 * sheet order, a fault's mending as an item of its own before the item that it mends; people stand
 * by id. Filled by {@link Compiler} and not changed afterwards.
 */
final class Model {
  /** A moment that does not come. */
  static final long NEVER = Long.MAX_VALUE / 4;

  /** A moment before anything. */
  static final long EVER = -NEVER;

  static final byte OPEN = 0;
  static final byte IN_HAND = 1;
  static final byte GOOD = 2;

  long seed;
  double sqrtShare;
  double sqrtRest;
  long grace;
  double forgotten;
  ForecastInput.Silence silence;
  Dist awayFor;

  /** From a last item to the word of it. */
  Dist delay;

  int rooms;
  int items;
  int people;
  int kinds;
  int places;

  String[] roomId;

  /** Position of the room in the input. */
  int[] roomOrder;

  int[] firstItem;
  int[] startItem;
  long[] target;
  long[] cap;
  long[] begins;

  /** When the room has started, or {@link #NEVER}. */
  long[] started;

  /** How long the room is occupied, or null. */
  Dist[] occupied;

  long[] roomScope;

  int[] room;
  String[] key;

  /** The item that this one mends, or -1. */
  int[] mends;

  String[] section;
  long[] scope;
  Dist[] hands;
  Dist[] waits;
  int[] extraOneIn;
  long[] extraMs;
  int[][] before;
  int[][] dependants;
  boolean[] marks;

  /** A step right after another: those in the room go on with it before anything else. */
  boolean[] continues;

  /** The item that marks the step which this one gates, or -1. */
  int[] gatedBy;

  long[] notBefore;
  int[] place;
  boolean[] inRoom;
  boolean[] isArrival;
  long[] arrivalFrom;
  Dist[] arrivalLate;
  boolean[] arrivalSilent;
  long[] life;
  boolean[] asked;
  byte[] state;
  long[] began;
  long[] good;

  /** Who has it in hand or did it, or -1. */
  int[] by;

  /** Slots of item i are firstSlot[i] to firstSlot[i + 1] - 1; likewise needs. */
  int[] firstSlot;

  int[][] slotOwn;
  int[][] slotRoaming;
  int[] slotOwnGroup;
  int[] slotRoamingGroup;

  int[] firstNeed;
  int[] needKind;
  int[] needUnits;
  int[] needUntil;
  boolean[] needHeld;

  /** Needs that end with item i. */
  int[][] endsNeeds;

  String[] kindId;
  int[] capacity;
  int[][] promised;
  int[][] promisedUnits;

  /** Ranked items that want a kind; items that a person may take. */
  Bits[] kindRanked;

  Bits[] personOwnItems;
  Bits[] personRanked;

  String[] personId;
  int[] personRoom;

  /** Those whose own room it is, by id. */
  int[][] roomPeople;

  long[] personScope;

  /** When the person came, or {@link #NEVER}. */
  long[] arrivedAt;

  /** The person's last finish in any room of the input, or {@link #EVER}. */
  long[] lastFinish;

  long[] plannedAt;
  Dist[] late;
  boolean[] arrivalReported;
  long[] leavesAt;
  long[][] awayFrom;
  long[][] awayTo;
  long[] lastWordAt;
  boolean[][] styles;

  String[] placeId;
  long[] opensAt;
  Dist[] walk;

  /** Words of 64 items a room. */
  int words;

  /** Per room and word: items that own people may take; of these the asked ones; errands. */
  long[] ownItems;

  long[] askedItems;
  long[] errandItems;

  /** Per room and word: asked items and errands, which do not stand in sheet order only. */
  long[] urgent;

  boolean[] hasAsked;
  boolean[] hasErrands;

  /** Rank of an item among those that roaming people or nobody does, or -1; and back. */
  int[] rank;

  int[] ranked;

  /** By word of ranks: items that want more or less than one person. */
  long[] rankedAlways;

  /**
   * By word of ranks, for the items that want one: the groups of roaming people, and their items.
   */
  int[][] rankedGroups;

  long[][] rankedGroupItems;

  /** By own person and word of the room: items that this person may take. */
  long[] personOwn;

  /** Members of a group. */
  Bits[] groupMembers;

  /** What each item waits for before anything is drawn; items that are not done for good. */
  short[] missing;

  int[] undone;

  /** Items that may lapse, come by themselves or take a rare extra. */
  int[] rare;

  /** Open items that wait for a booked time; open ones that come by themselves. */
  int[] booked;

  int[] arriving;

  /** Nobody's draw, or one whose person is not known before. */
  static final int NOBODY = -1;

  static final int ANYBODY = -2;

  /** By item: the one whose factor its hands have, if known. */
  int[] lead;

  /**
   * What is drawn before a trial: open items with log-normal hands led by one who is known, by
   * nobody, then log-normal waits (the item + all items), then hands that anybody may lead.
   */
  int[] drawn;

  /** How many are led; how many are known when drawn. */
  int drawnLed;

  int drawnKnown;
  long[] drawnStream;
  int[] drawnLead;
  double[] drawnMu;
  double[] drawnSigma;

  /** See {@link Rows}. */
  int[] row;

  int[] dependant;
  int[] prerequisite;

  /** The words of a bit set that are not empty: of items by room, or of ranks. */
  static final class Bits {
    int[] word = new int[0];
    long[] bits = new long[0];

    void set(int at, int bit) {
      int n = java.util.Arrays.binarySearch(word, at);
      if (n < 0) {
        n = -n - 1;
        word = insert(word, n, at);
        long[] more = new long[bits.length + 1];
        System.arraycopy(bits, 0, more, 0, n);
        System.arraycopy(bits, n, more, n + 1, bits.length - n);
        bits = more;
      }
      bits[n] |= 1L << bit;
    }

    private static int[] insert(int[] a, int n, int value) {
      int[] more = new int[a.length + 1];
      System.arraycopy(a, 0, more, 0, n);
      more[n] = value;
      System.arraycopy(a, n, more, n + 1, a.length - n);
      return more;
    }
  }

  /** The word of an item in bit sets by room. */
  int wordOf(int i) {
    return room[i] * words + ((i - firstItem[room[i]]) >> 6);
  }

  int slotsOf(int i) {
    return firstSlot[i + 1] - firstSlot[i];
  }

  int needsOf(int i) {
    return firstNeed[i + 1] - firstNeed[i];
  }

  /** What the model allows for an item's work: hands, waiting and one walk there. */
  long usualOf(int i) {
    return hands[i].usual + waits[i].usual;
  }

  /** The item under whose key the figures of this one go. */
  int shown(int i) {
    return mends[i] >= 0 ? mends[i] : i;
  }
}
