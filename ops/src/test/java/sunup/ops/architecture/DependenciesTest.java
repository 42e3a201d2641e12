package sunup.ops.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Dependencies point one way: ops, then server, then the model, which touches nothing outside. */
class DependenciesTest {
  private static final String[] MODEL = {
    "sunup.board..",
    "sunup.units..",
    "sunup.sheets..",
    "sunup.forecast..",
    "sunup.moves..",
    "sunup.outlook..",
    "sunup.trying..",
    "sunup.wire..",
    "sunup.codec..",
    "sunup.review..",
    "sunup.bedside..",
    "sunup.drugs.."
  };
  private static final String[] SERVER = {
    "sunup.suites..",
    "sunup.cluster..",
    "sunup.journal..",
    "sunup.live..",
    "sunup.http..",
    "sunup.intake..",
    "sunup.access..",
    "sunup.editions..",
    "sunup.audit..",
    "sunup.archive..",
    "sunup.tls..",
    "sunup.push.."
  };
  private static JavaClasses all;

  @BeforeAll
  static void read() {
    all =
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("sunup");
  }

  @Test
  void shouldHaveReadAllThreeModules() {
    assertThat(all.stream().map(JavaClass::getPackageName))
        .contains("sunup.board", "sunup.forecast", "sunup.http", "sunup.journal", "sunup.ops");
  }

  @Test
  void shouldPointOneWayWhenModulesUseEachOther() {
    rule(
        noClasses()
            .that()
            .resideInAnyPackage(MODEL)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(SERVER));
    rule(
        noClasses()
            .that()
            .resideInAnyPackage(MODEL)
            .should()
            .dependOnClassesThat()
            .resideInAPackage("sunup.ops.."));
    rule(
        noClasses()
            .that()
            .resideInAnyPackage(SERVER)
            .should()
            .dependOnClassesThat()
            .resideInAPackage("sunup.ops.."));
  }

  @Test
  void shouldKeepEveryClassInAKnownPackageSoThatNoRuleMissesIt() {
    assertThat(all.stream().map(c -> second(c.getPackageName())).distinct())
        .isSubsetOf(
            "board",
            "sheets",
            "forecast",
            "moves",
            "outlook",
            "trying",
            "wire",
            "codec",
            "review",
            "bedside",
            "drugs",
            "units",
            "suites",
            "cluster",
            "journal",
            "live",
            "http",
            "intake",
            "access",
            "editions",
            "audit",
            "archive",
            "tls",
            "push",
            "ops");
  }

  @Test
  void shouldKeepTheModelFreeOfTheServersLibrariesFilesNetworkAndThreads() {
    rule(
        noClasses()
            .that()
            .resideInAnyPackage(MODEL)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                "io.vertx..",
                "io.netty..",
                "java.sql..",
                "java.net..",
                "java.nio.file..",
                "java.nio.channels..",
                "org.slf4j..",
                "java.util.concurrent.."));
    rule(
        noClasses()
            .that()
            .resideInAnyPackage(MODEL)
            .should()
            .dependOnClassesThat()
            .haveNameMatching("java\\.io\\.(File.*|RandomAccessFile|Console)"));
    rule(
        noClasses()
            .that()
            .resideInAnyPackage(MODEL)
            .should()
            .dependOnClassesThat(
                DescribedPredicate.describe("are threads", c -> c.isAssignableTo(Thread.class))));
  }

  @Test
  void shouldKeepClocksOutOfTheModel() {
    for (Class<?> now :
        Set.of(Instant.class, LocalDate.class, LocalDateTime.class, ZonedDateTime.class)) {
      rule(noClasses().that().resideInAnyPackage(MODEL).should().callMethod(now, "now"));
    }
    rule(
        noClasses()
            .that()
            .resideInAnyPackage(MODEL)
            .should()
            .callMethod(System.class, "currentTimeMillis"));
    rule(
        noClasses().that().resideInAnyPackage(MODEL).should().callMethod(System.class, "nanoTime"));
    rule(
        noClasses()
            .that()
            .resideInAnyPackage(MODEL)
            .should()
            .dependOnClassesThat()
            .belongToAnyOf(java.time.Clock.class, java.util.Random.class));
  }

  @Test
  void shouldLetTheForecastStandAlone() {
    rule(
        noClasses()
            .that()
            .resideInAPackage("sunup.forecast..")
            .should()
            .dependOnClassesThat(
                DescribedPredicate.describe(
                    "are of another part of the project or of a library but its annotations",
                    c ->
                        !c.getPackageName().startsWith("sunup.forecast")
                            && !c.getPackageName().startsWith("java.")
                            && !c.getPackageName().startsWith("com.fasterxml.jackson.annotation")
                            && !c.isPrimitive()
                            && !c.isArray())));
  }

  @Test
  void shouldNotLetTheSimulatedHospitalKnowHowTheBoardForecasts() {
    rule(
        noClasses()
            .that()
            .resideInAPackage("sunup.ops.rehearsal..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                "sunup.forecast..",
                "sunup.outlook..",
                "sunup.trying..",
                "sunup.http..",
                "sunup.live..",
                "sunup.journal..",
                "sunup.suites.."));
  }

  @Test
  void shouldKeepJournalAndOwnersFreeOfTheNetwork() {
    rule(
        noClasses()
            .that()
            .resideInAnyPackage("sunup.journal..", "sunup.suites..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                "io.vertx..",
                "io.netty..",
                "com.hazelcast..",
                "sunup.cluster..",
                "sunup.http..",
                "sunup.live..",
                "sunup.access..",
                "sunup.editions..",
                "sunup.intake.."));
  }

  /** The words of a morning, its sheets, its drugs and their JSON name each other: one part. */
  private static final SliceAssignment PARTS =
      new SliceAssignment() {
        @Override
        public SliceIdentifier getIdentifierOf(JavaClass c) {
          String part = c.getPackageName();
          boolean words = part.matches("sunup\\.(board|sheets|codec|drugs)");
          return SliceIdentifier.of(words ? "words" : part);
        }

        @Override
        public String getDescription() {
          return "parts of the project";
        }
      };

  @Test
  void shouldHaveNoCyclesOfPackages() {
    slices().assignedFrom(PARTS).should().beFreeOfCycles().check(all);
  }

  private static void rule(com.tngtech.archunit.lang.syntax.elements.ClassesShouldConjunction r) {
    ((ArchRule) r).allowEmptyShould(true).check(all);
  }

  private static String second(String name) {
    return name.replaceFirst("^sunup\\.([a-z]+).*$", "$1");
  }
}
