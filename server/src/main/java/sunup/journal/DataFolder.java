package sunup.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** A folder that holds the board's data, held by one process at a time. */
public final class DataFolder implements AutoCloseable {
  private static final FileAttribute<?> OWNER_AND_GROUP =
      PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwxr-x---"));

  private static final int LONGEST_NOTE = 64;

  private final Path path;
  private final FileChannel channel;

  private DataFolder(Path path, FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /**
   * Makes the folder if it is missing and takes it for this process.
   *
   * @throws IOException if it can't be made, or another process holds it; the message says which
   */
  public static DataFolder hold(Path folder) throws IOException {
    Path path = folder.toAbsolutePath().normalize();
    make(path);
    Path lockFile = path.resolve("in-use");
    FileChannel channel =
        FileChannel.open(
            lockFile, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    if (!lock(channel)) {
      String who = note(channel);
      channel.close();
      throw new IOException(
          "The data folder "
              + path
              + " is in use by "
              + who
              + ". Stop that one, or give this one another data folder.");
    }
    byte[] words = ("process " + ProcessHandle.current().pid()).getBytes(StandardCharsets.UTF_8);
    channel.truncate(0);
    channel.write(ByteBuffer.wrap(words), 0);
    return new DataFolder(path, channel);
  }

  /**
   * Makes the folder if it is missing, for its owner and the owner's group alone: what is in it has
   * keys and texts about patients.
   *
   * @throws IOException if it can't be made
   */
  public static void make(Path folder) throws IOException {
    Path path = folder.toAbsolutePath().normalize();
    if (Files.isDirectory(path)) {
      return;
    }
    if (path.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.createDirectories(path, OWNER_AND_GROUP);
    } else {
      Files.createDirectories(path);
    }
    syncFolder(path.getParent());
  }

  private static boolean lock(FileChannel channel) throws IOException {
    try {
      FileLock lock = channel.tryLock();
      return lock != null;
    } catch (OverlappingFileLockException e) {
      // Held by this very process: as taken as by another one.
      return false;
    }
  }

  private static String note(FileChannel channel) {
    try {
      ByteBuffer words = ByteBuffer.allocate(LONGEST_NOTE);
      channel.read(words, 0);
      String text = new String(words.array(), 0, words.position(), StandardCharsets.UTF_8);
      return text.isBlank() ? "another process" : text;
    } catch (IOException e) {
      return "another process";
    }
  }

  /** A new entry in a folder is durable only after the folder itself was synced. */
  static void syncFolder(Path folder) throws IOException {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }

  public Path path() {
    return path;
  }

  public Path file(String name) {
    return path.resolve(name);
  }

  /** Lets go of the folder. */
  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      // The lock ends with the process at the latest.
    }
  }
}
