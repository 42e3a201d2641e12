package sunup.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;

/** Files that nobody but the board's own user may read: keys, pepper, passwords, backups. */
public final class SecretFile {
  private SecretFile() {}

  /** Makes an empty one. Where files have no owner's permissions it is a file like others. */
  public static void make(Path file) throws IOException {
    Files.createFile(file, attributes(file));
  }

  /** What such a file is made with, for whoever makes it otherwise. */
  static FileAttribute<?>[] attributes(Path beside) {
    return posix(beside)
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
        }
        : new FileAttribute<?>[0];
  }

  /**
   * Refuses a file that everybody may read.
   *
   * @param what it is, for example {@code the key}
   * @throws IOException that says what to do
   */
  public static void check(Path file, String what) throws IOException {
    if (posix(file)
        && Files.exists(file)
        && Files.getPosixFilePermissions(file).contains(PosixFilePermission.OTHERS_READ)) {
      throw new IOException(
          "Everybody on this machine may read "
              + what
              + " "
              + file
              + ". Change that: chmod 600 "
              + file);
    }
  }

  private static boolean posix(Path file) {
    return file.getFileSystem().supportedFileAttributeViews().contains("posix");
  }
}
