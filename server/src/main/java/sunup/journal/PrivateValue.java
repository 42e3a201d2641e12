package sunup.journal;

/**
 * A value that may be erased, apart from the events. An event holds {@code ref} and
 * HMAC-SHA256(key, value); erasing deletes the row, and nobody can guess the value from the
 * commitment.
 *
 * @param ref names it, unique over all mornings
 * @param key 32 random bytes
 * @param value the text in UTF-8
 * @param eraseAfter when it is due for erasing, epoch milliseconds of morning time
 */
public record PrivateValue(String ref, Bytes key, Bytes value, long eraseAfter) {}
