package sunup.http;

import java.nio.file.Path;
import java.util.List;
import sunup.access.PairingOptions;
import sunup.cluster.ClusterOptions;
import sunup.journal.EventTypes;
import sunup.journal.PostgresAddress;
import sunup.live.ForecastPool;
import sunup.live.Limits;
import sunup.live.Pace;
import sunup.suites.Clock;

/**
 * What a server is started with.
 *
 * @param dataFolder where the journal is kept; made if it is not there
 * @param database keeps the journal instead of the data folder; null for one node alone
 * @param cluster makes it one of several nodes, which share the database; null for one alone
 * @param siteFiles a file a suite: rooms, people, equipment, places; addresses that name no suite
 *     mean the first
 * @param host address to listen on; beyond this machine only with pairing and TLS
 * @param port 0 takes a free one
 * @param clock the three times
 * @param origins origins besides its own whose pages may talk to the server
 * @param limits of sockets
 * @param pace of frames, heartbeats and forecasts
 * @param spareShare of the forecasting threads' time, 0 to 1: what finer figures and moves may take
 * @param types of events that it reads and may write
 * @param pairing screens are paired and people sign on; null: neither, and it listens on this
 *     machine only
 * @param doors TLS, the second port and what connections may take up
 */
public record ServerOptions(
    Path dataFolder,
    PostgresAddress database,
    ClusterOptions cluster,
    List<Path> siteFiles,
    String host,
    int port,
    Clock clock,
    List<String> origins,
    Limits limits,
    Pace pace,
    double spareShare,
    EventTypes types,
    PairingOptions pairing,
    Doors doors) {
  public static final String DEFAULT_HOST = "127.0.0.1";

  public ServerOptions {
    siteFiles = List.copyOf(siteFiles);
    origins = List.copyOf(origins);
  }

  /** For one suite, on loopback with the usual limits. */
  public static ServerOptions of(Path dataFolder, Path siteFile, int port, Clock clock) {
    return of(dataFolder, List.of(siteFile), port, clock);
  }

  /** On loopback with the usual limits. */
  public static ServerOptions of(Path dataFolder, List<Path> siteFiles, int port, Clock clock) {
    return new ServerOptions(
        dataFolder,
        null,
        null,
        siteFiles,
        DEFAULT_HOST,
        port,
        clock,
        List.of(),
        Limits.DEFAULT,
        Pace.DEFAULT,
        ForecastPool.SPARE_SHARE,
        EventTypes.ofProgram(),
        null,
        Doors.PLAIN);
  }

  /**
   * The same with the journal in a PostgreSQL, or in the data folder if it is null.
   *
   * @param nodes makes it one of several, or null
   */
  public ServerOptions on(PostgresAddress other, ClusterOptions nodes) {
    return with(other, nodes, host, spareShare, pairing, doors);
  }

  /** The same with another share for finer figures and moves. */
  public ServerOptions sparing(double share) {
    return with(database, cluster, host, share, pairing, doors);
  }

  /** The same with screens that are paired. */
  public ServerOptions pairing(PairingOptions its) {
    return with(database, cluster, host, spareShare, its, doors);
  }

  /** The same on another address, which only paired screens over TLS may reach from elsewhere. */
  public ServerOptions listening(String address) {
    return with(database, cluster, address, spareShare, pairing, doors);
  }

  /** The same with other doors. */
  public ServerOptions through(Doors others) {
    return with(database, cluster, host, spareShare, pairing, others);
  }

  /** The same with other limits of sockets. */
  public ServerOptions within(Limits others) {
    return new ServerOptions(
        dataFolder,
        database,
        cluster,
        siteFiles,
        host,
        port,
        clock,
        origins,
        others,
        pace,
        spareShare,
        types,
        pairing,
        doors);
  }

  private ServerOptions with(
      PostgresAddress journal,
      ClusterOptions nodes,
      String address,
      double share,
      PairingOptions screens,
      Doors its) {
    return new ServerOptions(
        dataFolder,
        journal,
        nodes,
        siteFiles,
        address,
        port,
        clock,
        origins,
        limits,
        pace,
        share,
        types,
        screens,
        its);
  }
}
