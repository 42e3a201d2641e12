package sunup.ops;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Plays the simulated hospital against a running board. */
@Command(name = "rehearse", mixinStandardHelpOptions = true)
final class RehearseCommand implements Callable<Integer> {
  @Override
  public Integer call() throws Wrong {
    throw Wrong.failed("not there yet");
  }
}
