/**
 * What is kept of closed mornings for the review, and what is asked of it: one row per first case,
 * made from the journal and thrown away and made again at will. ARCHIVE.md beside this module says
 * which engine keeps it and why.
 */
package sunup.archive;
