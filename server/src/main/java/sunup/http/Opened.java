package sunup.http;

import io.vertx.core.Vertx;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import sunup.access.Access;
import sunup.access.Connections;
import sunup.access.PairingOptions;
import sunup.access.ProviderOptions;
import sunup.archive.Archivist;
import sunup.archive.Brought;
import sunup.archive.FactStore;
import sunup.archive.ForecastLog;
import sunup.archive.LazyFacts;
import sunup.board.LearnedTimes;
import sunup.board.RoomId;
import sunup.board.SuiteId;
import sunup.cluster.Cluster;
import sunup.codec.Problem;
import sunup.editions.Editions;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;
import sunup.journal.EventCodec;
import sunup.journal.Journal;
import sunup.journal.PostgresJournal;
import sunup.journal.SideDatabase;
import sunup.journal.SqliteJournal;
import sunup.push.PushTerms;
import sunup.push.Pushes;
import sunup.suites.Company;
import sunup.suites.Decider;
import sunup.suites.Seal;
import sunup.suites.Suites;
import sunup.tls.Identity;
import sunup.tls.TlsOptions;

/**
 * What is opened before a server is put together: the journal first, which holds the data folder.
 *
 * @param cluster null for one node alone
 * @param said what the board said, kept for its trial
 * @param access null where screens are not paired
 * @param identity null where the board speaks without TLS
 */
record Opened(
    List<SiteFile> sites,
    Journal journal,
    Suites suites,
    Cluster cluster,
    Archivist archivist,
    FactStore facts,
    Editions editions,
    ForecastLog said,
    Access access,
    Identity identity) {
  /** Bytes of a site's file. */
  static final long SITE_BYTES_MAX = 1 << 20;

  /**
   * Opens all of it.
   *
   * @throws IllegalArgumentException that says what to do if the options, the site's file or the
   *     data folder can't be used
   */
  static Opened of(Vertx vertx, ServerOptions options) {
    TlsOptions tls = options.doors().tls();
    if (options.pairing() == null || tls == null) {
      Connections.checkLoopback(options.host());
    }
    List<SiteFile> sites = sites(options.siteFiles());
    Deque<Runnable> opened = new ArrayDeque<>();
    try {
      Identity identity = tls == null ? null : Identity.open(vertx, tls, Instant::now);
      if (identity != null) {
        opened.push(identity::close);
      }
      Journal journal = journal(options);
      opened.push(journal::close);
      Access access = access(options, sites);
      if (access != null) {
        opened.push(access::close);
      }
      Editions editions = Editions.beside(options.dataFolder(), options.database());
      FactStore facts = new LazyFacts(options.dataFolder());
      ForecastLog said = new ForecastLog(() -> beside(options, ForecastLog.PART));
      Archivist archivist =
          new Archivist(
              journal,
              codec(options),
              facts,
              said,
              new Brought(() -> beside(options, Brought.PART)));
      // Last, so that no morning is owned by a node that does not come up.
      Function<SuiteId, LearnedTimes> learned = learned(sites, archivist);
      Cluster cluster =
          options.cluster() == null ? null : join(vertx, options, journal, access, learned);
      Suites suites = cluster == null ? suites(journal, options, null, learned) : cluster.suites();
      opened.clear();
      return new Opened(
          sites, journal, suites, cluster, archivist, facts, editions, said, access, identity);
    } catch (IOException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    } finally {
      opened.forEach(Runnable::run);
    }
  }

  /** What an opening freezes: of the suites whose site's file does not say otherwise. */
  private static Function<SuiteId, LearnedTimes> learned(
      List<SiteFile> sites, Archivist archivist) {
    Set<SuiteId> learn =
        sites.stream().filter(SiteFile::learns).map(SiteFile::suite).collect(Collectors.toSet());
    return suite -> learn.contains(suite) ? archivist.learned(suite) : null;
  }

  /** After the journal, which holds the data folder. */
  private static Access access(ServerOptions options, List<SiteFile> sites) throws IOException {
    PairingOptions pairing = options.pairing();
    if (pairing == null) {
      return null;
    }
    if (options.database() != null && pairing.pepper() == null) {
      throw new IllegalArgumentException(
          "Several nodes need the same pepper: name a file that all of them have.");
    }
    Map<SuiteId, Set<RoomId>> rooms = new LinkedHashMap<>();
    Map<SuiteId, PushTerms> push = new HashMap<>();
    for (SiteFile site : sites) {
      rooms.put(
          site.suite(), site.rooms().stream().map(SiteFile.Room::id).collect(Collectors.toSet()));
      if (site.push() != null) {
        push.put(site.suite(), site.push());
      }
    }
    return Access.open(
        beside(options, "access"),
        pairing.pepper() == null ? options.dataFolder().resolve("pepper") : pairing.pepper(),
        options.database() == null,
        pairing.pepperLost(),
        pairing.provider() == null ? null : ProviderOptions.read(pairing.provider()),
        options.clock(),
        rooms,
        new Pushes(push, pairing.push()));
  }

  /** Reads only: nothing random is asked of it. */
  private static EventCodec codec(ServerOptions options) {
    return new EventCodec(count -> new byte[count], options.types());
  }

  private static Cluster join(
      Vertx vertx,
      ServerOptions options,
      Journal journal,
      Access access,
      Function<SuiteId, LearnedTimes> learned)
      throws IOException {
    return Cluster.join(
        vertx,
        options.cluster(),
        options.types(),
        options.clock(),
        access == null ? Seal.NONE : access.seal(),
        others -> suites(journal, options, others, learned));
  }

  /**
   * @param others the other nodes, or null
   */
  private static Suites suites(
      Journal journal,
      ServerOptions options,
      Company others,
      Function<SuiteId, LearnedTimes> learned) {
    return Suites.open(
        journal,
        Decider.board(options.pairing() != null),
        options.clock(),
        options.types(),
        others,
        learned);
  }

  private static SideDatabase beside(ServerOptions options, String part) throws IOException {
    return SideDatabase.beside(options.dataFolder(), options.database(), part);
  }

  private static Journal journal(ServerOptions options) throws IOException {
    if (options.cluster() != null && options.database() == null) {
      throw new IllegalArgumentException(
          "Several nodes share one database: a file in a data folder is for one node alone.");
    }
    return options.database() == null
        ? SqliteJournal.open(options.dataFolder())
        : PostgresJournal.open(options.database());
  }

  private static List<SiteFile> sites(List<Path> files) {
    Map<SuiteId, Path> seen = new HashMap<>();
    List<SiteFile> sites = new ArrayList<>();
    for (Path file : files) {
      SiteFile site = site(file);
      Path other = seen.putIfAbsent(site.suite(), file);
      if (other != null) {
        throw new IllegalArgumentException(
            "The suite " + site.suite() + " is in " + other + " and in " + file + ": rename one.");
      }
      sites.add(site);
    }
    return sites;
  }

  private static SiteFile site(Path file) {
    String name = file.getFileName().toString();
    SiteReader.Result read;
    try {
      if (Files.size(file) > SITE_BYTES_MAX) {
        throw new IllegalArgumentException(
            "The site's file " + file + " is larger than any site's.");
      }
      read = SiteReader.read(name, Files.readString(file));
    } catch (IOException e) {
      throw new IllegalArgumentException(
          "The site's file " + file + " can't be read: " + e.getMessage(), e);
    }
    if (read.site() == null) {
      List<Problem> problems = read.problems();
      throw new IllegalArgumentException(
          problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
    }
    return read.site();
  }
}
