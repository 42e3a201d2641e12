package sunup.forecast;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;

/**
 * One component: compiled, and simulated by as many threads as come. Each takes a stretch of trials
 * that none has begun, until none is left. Trials do not know of each other and sums are whole
 * numbers, so it does not matter who played which.
 */
final class Part {
  /** Items times trials of a stretch: some milliseconds, so that all end at about the same time. */
  private static final int STRETCH_WORK = 20_000;

  /** What one thread at a time plays trials with, and what it has counted. */
  private record Hand(Trial trial, Tally tally) {}

  final Model model;
  final Moments moments;
  private final long epoch;
  private final int stretch;
  private final List<Hand> hands = new ArrayList<>();
  private final ArrayDeque<Hand> idle = new ArrayDeque<>();
  private int begun;

  Part(ForecastInput in, List<Integer> rooms) {
    model = Compiler.compile(in, rooms);
    moments = new Moments(model, in.trials());
    epoch = in.now();
    int blocks = STRETCH_WORK / Math.max(1, model.items) / Moments.BLOCK;
    stretch = Math.max(1, blocks) * Moments.BLOCK;
    Trial trial = new Trial(model);
    hands.add(new Hand(trial, new Tally(model, moments, epoch)));
    idle.add(hands.get(0));
  }

  /** Runs trials until so many have been begun, by this thread or by another. */
  void run(int upTo) {
    int from = begin(upTo);
    if (from == upTo) {
      return;
    }
    Hand hand = take();
    while (from < upTo) {
      int end = end(from, upTo);
      for (int n = from; n < end; n++) {
        hand.trial.run(n);
        hand.tally.take(hand.trial.course, n);
      }
      from = begin(upTo);
    }
    give(hand);
  }

  /** The first trial of a stretch that nobody has begun. */
  private synchronized int begin(int upTo) {
    if (begun >= upTo) {
      return upTo;
    }
    int from = begun;
    begun = end(from, upTo);
    moments.reach(begun);
    return from;
  }

  /** Ends with a block, so that no two threads write side by side. */
  private int end(int from, int upTo) {
    return Math.min(upTo, from / Moments.BLOCK * Moments.BLOCK + stretch);
  }

  private Hand take() {
    Trial first;
    synchronized (this) {
      if (!idle.isEmpty()) {
        return idle.pop();
      }
      first = hands.get(0).trial;
    }
    Hand another = new Hand(first.another(), new Tally(model, moments, epoch));
    synchronized (this) {
      hands.add(another);
    }
    return another;
  }

  private synchronized void give(Hand hand) {
    idle.push(hand);
  }

  /** What all have counted; once all have come back. */
  synchronized Tally tally() {
    Tally all = hands.get(0).tally;
    for (Hand hand : hands.subList(1, hands.size())) {
      all.takeOver(hand.tally);
    }
    return all;
  }

  /** What is known of silent people; the same to all hands. */
  synchronized Silence silence() {
    return hands.get(0).trial.silence();
  }
}
