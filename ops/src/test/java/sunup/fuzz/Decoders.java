package sunup.fuzz;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import sunup.access.AccessIn;
import sunup.cluster.ClusterIn;
import sunup.http.HttpIn;
import sunup.live.LiveIn;
import sunup.tls.TlsIn;

/** Every decoder that takes bytes from outside, by the package that owns it. */
final class Decoders {
  private static final String TOGETHER = "together";
  private static final int SEEDS_TOGETHER = 3;

  /** By whose they are; those of one package are made together. */
  private static final List<Supplier<List<Decoder>>> OWNERS =
      List.of(
          LiveIn::all,
          HttpIn::all,
          AccessIn::all,
          ClusterIn::all,
          TlsIn::all,
          FilesIn::all,
          BoardIn::all);

  private Decoders() {}

  static List<Decoder> all() {
    List<Decoder> all = new ArrayList<>();
    OWNERS.forEach(owner -> all.addAll(owner.get()));
    return all;
  }

  /** All of them as one: an input's first byte says whose it is. */
  static Decoder together() {
    List<Decoder> all = all();
    List<byte[]> seeds = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      // A few of each: reading all seeds would take the seconds that there are.
      for (byte[] seed : all.get(i).seeds().stream().limit(SEEDS_TOGETHER).toList()) {
        seeds.add(ByteBuffer.allocate(seed.length + 1).put((byte) i).put(seed).array());
      }
    }
    return new Decoder(
        TOGETHER,
        seeds,
        bytes ->
            bytes.length > 0
                && all.get(Math.floorMod(bytes[0], all.size()))
                    .holds()
                    .of(Arrays.copyOfRange(bytes, 1, bytes.length)));
  }

  /** One of them, or one with a planted mistake. */
  static Decoder named(String name) {
    if (name.equals(TOGETHER)) {
      return together();
    }
    List<String> known = new ArrayList<>();
    for (Decoder one : Planted.all()) {
      if (one.name().equals(name)) {
        return one;
      }
    }
    for (Supplier<List<Decoder>> owner : OWNERS) {
      for (Decoder one : owner.get()) {
        if (one.name().equals(name)) {
          return one;
        }
        known.add(one.name());
      }
    }
    throw new IllegalArgumentException(
        "there is no decoder '" + name + "'; there are " + String.join(", ", known));
  }
}
