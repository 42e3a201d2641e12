package sunup.access;

import java.nio.file.Path;

/**
 * How screens are paired and people sign on.
 *
 * @param pepper file with what goes into every PIN's hash; null for one that is made in the data
 *     folder
 */
public record PairingOptions(Path pepper) {}
