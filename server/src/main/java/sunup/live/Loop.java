package sunup.live;

/** An event loop, whose thread many sockets share: runs tasks in turn. From any thread. */
interface Loop {
  /** Runs the task after those that came before it; never at once. */
  void run(Runnable task);

  /** Whether the caller is on its thread. */
  boolean here();

  /** At once on the loop's own thread, in its turn from any other. */
  default void runHere(Runnable task) {
    if (here()) {
      task.run();
    } else {
      run(task);
    }
  }
}
