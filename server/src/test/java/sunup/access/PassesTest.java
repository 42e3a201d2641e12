package sunup.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import org.junit.jupiter.api.Test;

class PassesTest {
  private static final long NOW = 1_795_000_000_000L;

  private final Passes passes = new Passes(new byte[32]);

  @Test
  void shouldCountForFiveMinutesAndNoLonger() {
    String pass = passes.made("print", NOW);
    assertEquals("print", passes.read(pass, NOW + 5 * 60_000 - 1));
    assertNull(passes.read(pass, NOW + 5 * 60_000));
  }

  @Test
  void shouldNotCountWhenItsEndWasMoved() {
    String pass = passes.made("print", NOW);
    String moved = pass.replace(Long.toString(NOW + Passes.PASS_MS), Long.toString(NOW * 2));
    assertNull(passes.read(moved, NOW));
  }
}
