package sunup.fuzz;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * {@code ops/fuzz}: every decoder under the fuzzer, one after the other, or those with a planted
 * mistake until it is found.
 */
public final class FuzzRing {
  private static final int FINDINGS = 20;

  private FuzzRing() {}

  /**
   * Arguments: seed, seconds for each, {@code planted} or {@code real}, and names of decoders; none
   * is all.
   */
  public static void main(String[] args) throws Exception {
    long seed = Long.parseLong(args[0]);
    int seconds = Integer.parseInt(args[1]);
    boolean planted = args[2].equals("planted");
    List<Decoder> on = new ArrayList<>();
    for (String name : List.of(args).subList(3, args.length)) {
      on.add(Decoders.named(name));
    }
    if (on.isEmpty()) {
      on.addAll(planted ? Planted.all() : Decoders.all());
    }
    System.out.printf("%-24s %10s %10s %8s  %s%n", "decoder", "inputs", "taken", "edges", "found");
    long inputs = 0;
    long edges = 0;
    int found = 0;
    for (Decoder decoder : on) {
      Path folder = Project.root().resolve("target/fuzz").resolve(decoder.name());
      FuzzRun run = new FuzzRun(decoder, seed, seconds, planted ? 1 : FINDINGS);
      FuzzRun.Outcome one = run.in(folder);
      // What is planted is thrown: an input that was given up for its time is no find.
      List<Path> finds = planted ? one.broken() : one.found();
      String what = finds.isEmpty() ? "-" : finds.size() + " in " + folder;
      System.out.printf(
          "%-24s %,10d %,10d %,8d  %s%n",
          decoder.name(), one.inputs(), one.took(), one.edges(), what);
      inputs += one.inputs();
      edges += one.edges();
      found += finds.isEmpty() ? 0 : 1;
    }
    System.out.printf(
        "%d decoders, %,d inputs, %,d edges; found something in %d%n",
        on.size(), inputs, edges, found);
    System.exit(found == (planted ? on.size() : 0) ? 0 : 1);
  }
}
