package sunup.ops;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sunup.bedside.BedsideFigures;
import sunup.bedside.BedsideFigures.Listed;
import sunup.bedside.Card;
import sunup.bedside.Input;
import sunup.bedside.Release;
import sunup.codec.Fields;
import sunup.intake.ReleaseWriter;
import sunup.intake.SiteFile;
import sunup.intake.SiteReader;
import sunup.units.Unit;

/**
 * For the site's pharmacy: what each bedside figure says, and releasing it. Whoever may write the
 * site's file may release.
 */
@Command(
    name = "bedside",
    mixinStandardHelpOptions = true,
    description = "Bedside figures of a site: shows their pages, releases and withdraws them.",
    footer = {
      "",
      "A figure is off until it is released by the fingerprint that its page shows:",
      "  bedside list FILE",
      "  bedside page FILE cylinder",
      "  bedside release FILE cylinder=FINGERPRINT --by \"A. Pharmacist\""
    })
final class BedsideCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Say what to do:");
  }

  @Command(
      name = "list",
      mixinStandardHelpOptions = true,
      description = "All figures with their fingerprints: who released them, or why they are off.")
  int list(@Parameters(paramLabel = "FILE", description = "The site's file.") Path file)
      throws IOException, Wrong {
    for (Listed one : figures(site(file))) {
      out()
          .printf(
              "%-26s %s  %s%n",
              one.card().name(),
              one.fingerprint(),
              one.released() == null
                  ? one.off()
                  : "released by " + one.released().by() + " on " + one.released().on());
    }
    out().flush();
    return 0;
  }

  @Command(
      name = "page",
      mixinStandardHelpOptions = true,
      description = "The page of each figure named, or of all: what a release stands for.")
  int page(
      @Parameters(paramLabel = "FILE", description = "The site's file.") Path file,
      @Parameters(paramLabel = "FIGURE", arity = "0..*", description = "Their names.")
          List<String> names)
      throws IOException, Wrong {
    List<Listed> all = figures(site(file));
    List<String> wanted =
        names == null ? all.stream().map(one -> one.card().name()).toList() : names;
    for (String name : wanted) {
      print(find(all, name));
    }
    out().flush();
    return 0;
  }

  @Command(
      name = "release",
      mixinStandardHelpOptions = true,
      description = "Releases figures as they stand, by the fingerprints on their pages.")
  int release(
      @Parameters(paramLabel = "FILE", description = "The site's file; it is written.") Path file,
      @Parameters(
              paramLabel = "FIGURE=FINGERPRINT",
              arity = "1..*",
              description = "What was looked at.")
          Map<String, String> looked,
      @Option(names = "--by", required = true, description = "Who releases, by name.") String by,
      @Option(names = "--on", description = "The day, 2026-11-25; today in the site's zone.")
          LocalDate on)
      throws IOException, Wrong {
    SiteFile site = site(file);
    List<Listed> all = figures(site);
    LocalDate day = on == null ? today(site) : on;
    List<Release> kept = new ArrayList<>(site.bedside().releases());
    for (Map.Entry<String, String> one : looked.entrySet()) {
      Listed figure = find(all, one.getKey());
      if (!figure.fingerprint().equals(one.getValue())) {
        throw Wrong.input(
            one.getKey()
                + " stands as "
                + figure.fingerprint()
                + ", not "
                + one.getValue()
                + ": look at its page again. Nothing was released.");
      }
      kept.removeIf(r -> r.figure().equals(one.getKey()));
      kept.add(released(one.getKey(), one.getValue(), by, day));
    }
    write(file, kept);
    return 0;
  }

  @Command(
      name = "withdraw",
      mixinStandardHelpOptions = true,
      description = "Takes figures back: they are off until they are released again.")
  int withdraw(
      @Parameters(paramLabel = "FILE", description = "The site's file; it is written.") Path file,
      @Parameters(paramLabel = "FIGURE", arity = "1..*", description = "Their names.")
          List<String> names)
      throws IOException, Wrong {
    SiteFile site = site(file);
    List<Listed> all = figures(site);
    for (String name : names) {
      find(all, name);
    }
    write(
        file, site.bedside().releases().stream().filter(r -> !names.contains(r.figure())).toList());
    return 0;
  }

  private static Release released(String figure, String fingerprint, String by, LocalDate on)
      throws Wrong {
    try {
      return new Release(figure, fingerprint, by, on);
    } catch (IllegalArgumentException e) {
      throw Wrong.input(e.getMessage());
    }
  }

  private PrintWriter out() {
    return spec.commandLine().getOut();
  }

  /** Replaces the file whole, so that a kill leaves the old or the new one. */
  private void write(Path file, List<Release> releases) throws IOException, Wrong {
    String text = ReleaseWriter.write(Files.readString(file), releases);
    if (SiteReader.read(file.toString(), text).site() == null) {
      throw Wrong.failed(file + " could not be written so that it can be read. It is unchanged.");
    }
    Path next = file.resolveSibling(file.getFileName() + ".next");
    Files.writeString(next, text);
    DemoFolder.replace(next, file);
    out()
        .printf(
            "%d released in %s. It counts at once on boards that run with this file.%n",
            releases.size(), file);
    out().flush();
  }

  private static SiteFile site(Path file) throws IOException, Wrong {
    if (!Files.isReadable(file)) {
      throw Wrong.input(file + " can't be read.");
    }
    SiteReader.Result read = SiteReader.read(file.toString(), Files.readString(file));
    if (read.site() == null) {
      throw Wrong.input(
          read.problems().stream().map(Object::toString).collect(Collectors.joining("\n")));
    }
    return read.site();
  }

  private static LocalDate today(SiteFile site) {
    return LocalDate.now(ZoneId.of(site.settings().zone()));
  }

  private static List<Listed> figures(SiteFile site) {
    return new BedsideFigures(site.bedside()).list(today(site));
  }

  private static Listed find(List<Listed> all, String name) throws Wrong {
    for (Listed one : all) {
      if (one.card().name().equals(name)) {
        return one;
      }
    }
    throw Wrong.input(Fields.unknown(name, all.stream().map(one -> one.card().name()).toList()));
  }

  private void print(Listed one) {
    Card card = one.card();
    PrintWriter to = out();
    to.println(card.title() + " (" + card.name() + ", edition " + card.edition() + ")");
    to.println("  fingerprint  " + one.fingerprint());
    to.println(
        "  released     "
            + (one.released() == null
                ? "no; " + one.off()
                : "by " + one.released().by() + " on " + one.released().on()));
    to.println("  formula      " + card.formula());
    to.println("  source       " + card.source());
    to.println("  range        " + card.range());
    to.println("  caution      " + card.caution());
    if (!one.settings().isEmpty()) {
      to.println("  settings     " + one.settings().strip().replace("\n", "\n               "));
    }
    to.println("  dose         " + (card.dose() ? "yes: a second person below 18 years" : "no"));
    for (Input input : card.inputs()) {
      to.println("  asks         " + asks(input));
    }
    to.println();
  }

  private static String asks(Input input) {
    String what =
        input.kind() == Input.Kind.CHOICE
            ? String.join(", ", input.choices())
            : input.units().get(0).text(input.least())
                + " to "
                + input.units().get(0).text(input.most())
                + ", in "
                + input.units().stream().map(Unit::word).collect(Collectors.joining(" or "));
    return input.label()
        + ": "
        + what
        + (input.needed() ? "" : " (may be left out)")
        + (input.again() == Input.Again.NEVER ? "" : "; asked twice if unusual for the age");
  }
}
