/** Editions of a suite's sheets: kept beside the journal, published, and looked up. */
package sunup.editions;
