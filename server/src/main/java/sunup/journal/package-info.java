/**
 * The journal: the only truth of a morning. Append-only, fenced by epochs, chained by hashes,
 * synced before anything is acknowledged. {@link sunup.journal.Journal} is the port; {@link
 * sunup.journal.JdbcJournal} is the one implementation, shaped by a small {@link
 * sunup.journal.Dialect}.
 */
package sunup.journal;
