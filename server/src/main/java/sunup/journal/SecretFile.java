package sunup.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
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

  /** Makes one that is there whole or not at all, also after a power cut; never over another. */
  public static void write(Path file, byte[] bytes) throws IOException {
    Path target = file.toAbsolutePath();
    if (Files.exists(target)) {
      throw new FileAlreadyExistsException(target.toString());
    }
    Path part = target.resolveSibling(target.getFileName() + ".part");
    Files.deleteIfExists(part);
    make(part);
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
      ByteBuffer rest = ByteBuffer.wrap(bytes);
      while (rest.hasRemaining()) {
        channel.write(rest);
      }
      channel.force(true);
    }
    Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    DataFolder.syncFolder(target.getParent());
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
