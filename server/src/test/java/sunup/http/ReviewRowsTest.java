package sunup.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.vertx.core.MultiMap;
import java.lang.reflect.Proxy;
import org.junit.jupiter.api.Test;
import sunup.archive.FactFigures;
import sunup.review.Measures;

/** A file has so many rows at most, whatever became of the cases. */
class ReviewRowsTest {
  private static final ReviewQuery ALL =
      new ReviewQuery("main", MultiMap.caseInsensitiveMultiMap());

  /** Figures that know how many cases there are, and have no row. */
  private static FactFigures of(int cases, int cancelled, int untold) {
    int starts = cases - cancelled - untold;
    Measures measures = new Measures(cases, cancelled, untold, starts, 0, 400, null);
    return (FactFigures)
        Proxy.newProxyInstance(
            FactFigures.class.getClassLoader(),
            new Class<?>[] {FactFigures.class},
            (proxy, method, given) -> method.getName().equals("measures") ? measures : null);
  }

  @Test
  void shouldCountCancelledAndUntoldCasesAsTheRowsThatTheyAre() throws Exception {
    assertThat(ReviewRows.rows(of(50_000, 20_000, 20_000), ALL)).isEmpty();
    assertThatThrownBy(() -> ReviewRows.rows(of(50_001, 20_000, 20_000), ALL))
        .hasMessageContaining("shorter period");
    assertThatThrownBy(() -> ReviewRows.csv(of(60_000, 0, 59_991), ALL))
        .hasMessageContaining("9 starts");
  }
}
