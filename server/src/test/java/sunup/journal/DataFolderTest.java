package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DataFolderTest {
  @Test
  void shouldMakeAFolderThatOthersOnTheMachineCanNotLookInto(@TempDir Path folder)
      throws Exception {
    Path board = folder.resolve("data/board");
    DataFolder.hold(board).close();
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(board)))
        .startsWith("rwx")
        .endsWith("---");
  }
}
